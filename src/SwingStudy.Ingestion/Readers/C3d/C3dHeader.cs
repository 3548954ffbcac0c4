namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>The first block of a C3D file.</summary>
/// <param name="Points">Points of a frame.</param>
/// <param name="AnalogPerFrame">Analog values of a frame, all channels and samples together.</param>
/// <param name="FirstFrame">Number of the first frame in the recording, from 1.</param>
/// <param name="LastFrame">Number of the last frame; 65535 may stand for more.</param>
/// <param name="Scale">Point scale; negative for real storage.</param>
/// <param name="DataBlock">First block of the samples, from 1.</param>
/// <param name="AnalogSamples">Analog samples of a channel in a frame.</param>
/// <param name="RateHz">Frames a second.</param>
/// <param name="Events">Events of the header.</param>
internal sealed record C3dHeader(int Points, int AnalogPerFrame, int FirstFrame, int LastFrame, float Scale, int DataBlock, int AnalogSamples, float RateHz, IReadOnlyList<C3dEvent> Events)
{
    private const int FourLetterLabels = 12345;
    private const int MostEvents = 18;

    /// <summary>Reads it. Numbers in words are 16-bit words from 1.</summary>
    public static C3dHeader Read(ReadOnlySpan<byte> block, C3dByteOrder order)
    {
        int Word(ReadOnlySpan<byte> bytes, int number) => C3dWords.UInt16(bytes[((number - 1) * 2)..], order);
        var events = new List<C3dEvent>();
        var count = Word(block, 151);
        if (Word(block, 150) == FourLetterLabels && count <= MostEvents)
        {
            for (var i = 0; i < count; i++)
            {
                var time = C3dWords.Real(block[((152 + (2 * i)) * 2)..], order);
                var label = System.Text.Encoding.Latin1.GetString(block.Slice((198 + (2 * i)) * 2, 4)).TrimEnd(' ', '\0');
                if (float.IsFinite(time))
                    events.Add(new C3dEvent(label, time));
            }
        }

        return new C3dHeader(
            Word(block, 2), Word(block, 3), Word(block, 4), Word(block, 5), C3dWords.Real(block[12..], order), Word(block, 9), Word(block, 10), C3dWords.Real(block[20..], order), events);
    }
}
