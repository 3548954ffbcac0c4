namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Writes C3D files of all storage kinds.</summary>
/// <remarks>Source of the format: the C3D user guide, c3d.org.</remarks>
public static class C3dWriter
{
    private const int BlockBytes = 512;
    private const int LargestStored = 32000;
    /// <summary>Far below any measurement, and within the range of all reals.</summary>
    private const double SmallestScale = 1e-30;

    private const int FramesPerWrite = 1024;
    private const int ZeroOfUnsigned = 32768;

    /// <summary>Writes a recording.</summary>
    /// <param name="stream">Takes the bytes.</param>
    /// <param name="recording">What to write.</param>
    /// <param name="storage">Byte order and kind of numbers. Integers keep 1/32000 of the largest value.</param>
    /// <exception cref="ArgumentException">The recording has no frames, series of different lengths, an analog value that is not finite, or more than C3D holds.</exception>
    public static void Write(Stream stream, C3dRecording recording, C3dStorage storage)
    {
        Check(recording);
        var scale = recording.Points.SelectMany(point => point.X.Concat(point.Y).Concat(point.Z)).Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max() / LargestStored;
        var pointScale = (double)(float)(scale > 0 ? Math.Max(scale, SmallestScale) : 1);
        var analogScales = recording.Analog.Select(channel => AnalogScale(channel, storage)).ToArray();
        var blocks = Section(recording, storage, pointScale, analogScales, 0).Length / BlockBytes;
        var section = Section(recording, storage, pointScale, analogScales, blocks + 2);
        stream.Write(Header(recording, storage, pointScale, blocks + 2));
        stream.Write(section);
        WriteFrames(stream, recording, storage, pointScale, analogScales);
    }

    private static void Check(C3dRecording recording)
    {
        var frames = recording.FrameCount;
        if (frames == 0)
            throw new ArgumentException("A recording needs at least one frame.", nameof(recording));
        if (recording.Points.Any(point => point.X.Length != frames || point.Y.Length != frames || point.Z.Length != frames || (point.Residuals?.Length ?? frames) != frames))
            throw new ArgumentException($"All points need {frames} frames.", nameof(recording));
        if (recording.AnalogSamples < 1 || recording.Analog.Any(channel => channel.Values.Length != (long)frames * recording.AnalogSamples))
            throw new ArgumentException($"All analog channels need {frames} times {recording.AnalogSamples} samples.", nameof(recording));
        if (!recording.Analog.All(channel => channel.Values.All(double.IsFinite)))
            throw new ArgumentException("Analog values must be finite: C3D has no mark for a missing one.", nameof(recording));
        if (recording.Points.Count > ushort.MaxValue || recording.Analog.Count * recording.AnalogSamples > ushort.MaxValue)
            throw new ArgumentException("C3D holds at most 65535 points and analog values in a frame.", nameof(recording));
        if (!(recording.RateHz > 0) || recording.FirstFrame < 1)
            throw new ArgumentException("A recording needs a rate above 0 and a first frame from 1.", nameof(recording));
    }

    /// <summary>Integers have a scale of their own in each channel; reals are stored as they are.</summary>
    private static double AnalogScale(C3dAnalog channel, C3dStorage storage)
    {
        var largest = channel.Values.Select(Math.Abs).DefaultIfEmpty(0).Max();
        return storage.IsReal || largest == 0 ? 1 : (float)Math.Max(largest / LargestStored, SmallestScale);
    }

    private static byte[] Header(C3dRecording recording, C3dStorage storage, double pointScale, int dataBlock)
    {
        var header = new byte[BlockBytes];
        (header[0], header[1]) = (2, 0x50);
        void Word(int number, long value) => C3dWords.Write(header.AsSpan((number - 1) * 2), (ushort)Math.Min(value, ushort.MaxValue), storage.Order);
        Word(2, recording.Points.Count);
        Word(3, recording.Analog.Count * recording.AnalogSamples);
        Word(4, recording.FirstFrame);
        Word(5, recording.FirstFrame + recording.FrameCount - 1L);
        C3dWords.Write(header.AsSpan(12), (float)(storage.IsReal ? -pointScale : pointScale), storage.Order);
        Word(9, dataBlock);
        Word(10, recording.Analog.Count == 0 ? 0 : recording.AnalogSamples);
        C3dWords.Write(header.AsSpan(20), (float)recording.RateHz, storage.Order);
        Word(150, 12345);
        return header;
    }

    private static byte[] Section(C3dRecording recording, C3dStorage storage, double pointScale, double[] analogScales, int dataBlock)
    {
        var writer = new C3dSectionWriter(storage.Order);
        long frames = recording.FrameCount;
        writer.Integers("POINT", "USED", [recording.Points.Count]);
        writer.Reals("POINT", "SCALE", [storage.IsReal ? -pointScale : pointScale]);
        writer.Reals("POINT", "RATE", [recording.RateHz]);
        writer.Integers("POINT", "DATA_START", [dataBlock]);
        writer.Integers("POINT", "FRAMES", [Math.Min(frames, ushort.MaxValue)]);
        if (frames > ushort.MaxValue)
            writer.Reals("POINT", "LONG_FRAMES", [frames]);
        writer.Texts("POINT", "LABELS", [.. recording.Points.Select(point => point.Label)]);
        writer.Texts("POINT", "DESCRIPTIONS", [.. recording.Points.Select(_ => "")]);
        writer.Texts("POINT", "UNITS", [recording.PointUnit]);
        Analog(writer, recording, analogScales, storage);
        var last = recording.FirstFrame + frames - 1;
        writer.Reals("TRIAL", "CAMERA_RATE", [recording.RateHz]);
        writer.Integers("TRIAL", "ACTUAL_START_FIELD", [recording.FirstFrame & 0xFFFF, recording.FirstFrame >> 16], 2);
        writer.Integers("TRIAL", "ACTUAL_END_FIELD", [last & 0xFFFF, last >> 16], 2);
        Platforms(writer, recording.Platforms);
        Events(writer, recording.Events);
        foreach (var ((group, name), texts) in recording.Texts.OrderBy(pair => pair.Key.Group, StringComparer.Ordinal).ThenBy(pair => pair.Key.Name, StringComparer.Ordinal))
            writer.Texts(group, name, texts);
        return writer.Build();
    }

    private static void Analog(C3dSectionWriter writer, C3dRecording recording, double[] scales, C3dStorage storage)
    {
        var count = recording.Analog.Count;
        var isUnsigned = recording.IsAnalogUnsigned && !storage.IsReal;
        writer.Integers("ANALOG", "USED", [count]);
        writer.Texts("ANALOG", "LABELS", [.. recording.Analog.Select(channel => channel.Label)]);
        writer.Texts("ANALOG", "DESCRIPTIONS", [.. recording.Analog.Select(_ => "")]);
        writer.Reals("ANALOG", "GEN_SCALE", [1]);
        writer.Reals("ANALOG", "SCALE", scales, count);
        writer.Integers("ANALOG", "OFFSET", [.. scales.Select(_ => isUnsigned ? (double)ZeroOfUnsigned : 0)], count);
        writer.Texts("ANALOG", "UNITS", [.. recording.Analog.Select(channel => channel.Unit)]);
        writer.Reals("ANALOG", "RATE", [recording.RateHz * recording.AnalogSamples]);
        if (isUnsigned)
            writer.Texts("ANALOG", "FORMAT", ["UNSIGNED"]);
    }

    private static void Platforms(C3dSectionWriter writer, IReadOnlyList<C3dPlatform> platforms)
    {
        const string Group = "FORCE_PLATFORM";
        writer.Integers(Group, "USED", [platforms.Count]);
        if (platforms.Count == 0)
            return;
        var rows = platforms.Max(platform => platform.Channels.Count);
        writer.Integers(Group, "TYPE", [.. platforms.Select(platform => (double)platform.Type)], platforms.Count);
        writer.Integers(Group, "ZERO", [0, 0], 2);
        writer.Reals(Group, "CORNERS", [.. platforms.SelectMany(platform => platform.Corners)], 3, 4, platforms.Count);
        writer.Reals(Group, "ORIGIN", [.. platforms.SelectMany(platform => platform.Origin)], 3, platforms.Count);
        writer.Integers(Group, "CHANNEL", [.. platforms.SelectMany(platform => Enumerable.Range(0, rows).Select(row => row < platform.Channels.Count ? platform.Channels[row] + 1.0 : 0))], rows, platforms.Count);
        if (platforms.Any(platform => platform.Type == 4))
            writer.Reals(Group, "CAL_MATRIX", [.. platforms.SelectMany(platform => platform.Type == 4 ? platform.Calibration : new double[36])], 6, 6, platforms.Count);
    }

    private static void Events(C3dSectionWriter writer, IReadOnlyList<C3dEvent> events)
    {
        writer.Integers("EVENT", "USED", [events.Count]);
        if (events.Count == 0)
            return;
        writer.Texts("EVENT", "CONTEXTS", [.. events.Select(found => found.Context ?? "General")]);
        writer.Texts("EVENT", "LABELS", [.. events.Select(found => found.Label)]);
        writer.Texts("EVENT", "SUBJECTS", [.. events.Select(found => found.Subject ?? "")]);
        writer.Reals("EVENT", "TIMES", [.. events.SelectMany(found => (double[])[Math.Floor(found.TimeSeconds / 60), found.TimeSeconds - (60 * Math.Floor(found.TimeSeconds / 60))])], 2, events.Count);
    }

    private static void WriteFrames(Stream stream, C3dRecording recording, C3dStorage storage, double pointScale, double[] analogScales)
    {
        var values = (4 * recording.Points.Count) + (recording.Analog.Count * recording.AnalogSamples);
        var size = storage.IsReal ? sizeof(float) : sizeof(short);
        var buffer = new byte[Math.Min(FramesPerWrite, recording.FrameCount) * values * size];
        long written = 0;
        for (var from = 0; from < recording.FrameCount; from += FramesPerWrite)
        {
            var count = Math.Min(FramesPerWrite, recording.FrameCount - from);
            var frame = new C3dFrameWriter(buffer, storage, pointScale, analogScales);
            for (var i = from; i < from + count; i++)
                frame.Add(recording, i);
            stream.Write(buffer, 0, count * values * size);
            written += (long)count * values * size;
        }

        stream.Write(new byte[(BlockBytes - (written % BlockBytes)) % BlockBytes]);
    }
}
