using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>How the samples of a file lie in it.</summary>
/// <param name="Storage">Byte order and kind of numbers.</param>
/// <param name="Scale">Point scale, positive.</param>
/// <param name="DataStart">Position of the first frame.</param>
/// <param name="Points">Points of a frame.</param>
/// <param name="Channels">Analog channels.</param>
/// <param name="AnalogPerFrame">Analog values of a frame, left-over ones included.</param>
/// <param name="AnalogSamples">Samples of a channel in a frame.</param>
/// <param name="Frames">Whole frames.</param>
/// <param name="FirstFrame">Number of the first frame in the recording.</param>
/// <param name="RateHz">Frames a second.</param>
internal sealed record C3dShape(
    C3dStorage Storage, double Scale, long DataStart, int Points, int Channels, int AnalogPerFrame, int AnalogSamples, long Frames, long FirstFrame, double RateHz)
{
    private const int BlockBytes = 512;
    private const double SameRate = 1e-3;

    /// <summary>Bytes of a frame.</summary>
    public int FrameBytes => BytesOf(Points);

    /// <summary>Settles what header and parameters say against the size of the file; nothing is allocated from a count before.</summary>
    public static Outcome<C3dShape> Of(C3dHeader header, C3dParameters parameters, C3dByteOrder order, long sectionStart, long sectionEnd, long length, string file, List<Problem> notices)
    {
        var scale = header.Scale != 0 && float.IsFinite(header.Scale) ? header.Scale : parameters.Number("POINT", "SCALE") ?? 0;
        if (scale == 0 || !double.IsFinite(scale))
            return C3dMessages.ScaleZero(file);
        if (Rate(header, parameters, file, notices) is not { } rate)
            return C3dMessages.RateMissing(file);
        var block = header.DataBlock > 1 ? header.DataBlock : (int)Math.Clamp(parameters.Count("POINT", "DATA_START") ?? 0, 0, int.MaxValue);
        var start = (block - 1L) * BlockBytes;
        if (block <= 1 || start >= length || (start >= sectionStart && start < sectionEnd))
            return C3dMessages.DataOutside(file, block);
        var samples = header.AnalogPerFrame == 0 ? 0 : Math.Max(1, header.AnalogSamples);
        var shape = new C3dShape(
            new C3dStorage(order, scale < 0), Math.Abs(scale), start, header.Points, samples == 0 ? 0 : header.AnalogPerFrame / samples, header.AnalogPerFrame, samples,
            0, FirstOf(header, parameters), rate);
        return shape.WithFrames(header, parameters, length - start, file, notices);
    }

    private Outcome<C3dShape> WithFrames(C3dHeader header, C3dParameters parameters, long available, string file, List<Problem> notices)
    {
        var declared = Declared(header, parameters);
        var shape = this;
        if (parameters.Count("POINT", "USED") is { } used && used >= 0 && used <= ushort.MaxValue && (int)used != Points)
        {
            var fitsOther = declared * BytesOf((int)used) <= available;
            if (declared * (long)FrameBytes > available && fitsOther)
                shape = this with { Points = (int)used };
            notices.Add(C3dMessages.Differs(file, "points", Points, used, $"{shape.Points}"));
        }

        if (shape.FrameBytes == 0)
            return C3dMessages.NothingRecorded(file);
        if (parameters.Count("ANALOG", "USED") is { } channels && (int)channels != shape.Channels)
            notices.Add(C3dMessages.Differs(file, "analog channels", shape.Channels, channels, "The header's"));
        var whole = available / shape.FrameBytes;
        var frames = Math.Min(declared, whole);
        if (frames <= 0)
            return C3dMessages.NoFrames(file);
        if (frames < declared)
            notices.Add(C3dMessages.FramesShort(file, declared, frames));
        return shape with { Frames = frames };
    }

    private int BytesOf(int points) => ((4 * points) + AnalogPerFrame) * (Storage.IsReal ? sizeof(float) : sizeof(short));

    private static double? Rate(C3dHeader header, C3dParameters parameters, string file, List<Problem> notices)
    {
        double ofHeader = header.RateHz, ofParameter = parameters.Number("POINT", "RATE") ?? 0;
        var hasHeader = ofHeader > 0 && double.IsFinite(ofHeader);
        if (!(ofParameter > 0 && double.IsFinite(ofParameter)))
            return hasHeader ? ofHeader : null;
        if (hasHeader && Math.Abs((ofHeader / ofParameter) - 1) > SameRate)
            notices.Add(C3dMessages.Differs(file, "frame rate", ofHeader, ofParameter, "The parameter's"));
        return ofParameter;
    }

    private static long Declared(C3dHeader header, C3dParameters parameters)
    {
        if (parameters.Number("POINT", "LONG_FRAMES") is { } many && many >= 1 && many < int.MaxValue)
            return (long)many;
        if (Field(parameters, "ACTUAL_START_FIELD") is { } first && Field(parameters, "ACTUAL_END_FIELD") is { } last && last - first + 1 > ushort.MaxValue)
            return last - first + 1;
        if (parameters.Count("POINT", "FRAMES") is { } frames && frames >= 1 && frames < int.MaxValue)
            return (long)frames;
        return Math.Max(0, header.LastFrame - header.FirstFrame + 1L);
    }

    private static long FirstOf(C3dHeader header, C3dParameters parameters) =>
        Field(parameters, "ACTUAL_START_FIELD") is { } first && first >= 1 && (header.FirstFrame is 0 or ushort.MaxValue || first == header.FirstFrame) ? first : Math.Max(1, header.FirstFrame);

    /// <summary>A frame number in two unsigned words, the low one first.</summary>
    private static long? Field(C3dParameters parameters, string name) =>
        parameters.Find("TRIAL", name)?.Counts() is { Length: 2 } words ? (long)words[0] + (65536 * (long)words[1]) : null;
}
