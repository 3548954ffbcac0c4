using System.Buffers.Binary;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>What is text in a recording of markers: header and parameters, which stand before the samples. Source: C3D file format, user guide (public).</summary>
internal static class C3dTexts
{
    private const int BlockBytes = 512;
    private const byte Key = 0x50;
    private const int DataBlockAt = 16;
    private const int ProcessorAt = 3;

    /// <summary>Big-endian processor.</summary>
    private const byte Sgi = 86;

    /// <summary>The bytes before the samples; null where it is no such recording.</summary>
    public static byte[]? Of(byte[] content)
    {
        if (content.Length < 2 * BlockBytes || content[1] != Key)
            return null;
        var parameters = (content[0] - 1) * BlockBytes;
        if (parameters < BlockBytes || parameters + ProcessorAt >= content.Length || content[parameters + ProcessorAt] is not (84 or 85 or Sgi))
            return null;
        var word = content.AsSpan(DataBlockAt, 2);
        var data = content[parameters + ProcessorAt] == Sgi ? BinaryPrimitives.ReadUInt16BigEndian(word) : BinaryPrimitives.ReadUInt16LittleEndian(word);
        var end = (data - 1) * BlockBytes;
        return end > parameters && end <= content.Length ? content[..end] : null;
    }
}
