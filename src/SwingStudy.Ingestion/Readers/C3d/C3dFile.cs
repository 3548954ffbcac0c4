using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>An opened C3D file: its parameters, and its frames as a stream. Memory does not grow with the number of frames.</summary>
/// <remarks>Source of the format: the C3D user guide, c3d.org.</remarks>
public sealed class C3dFile : IDisposable
{
    private const int BlockBytes = 512;
    private const byte Mark = 0x50;
    private readonly Stream _stream;
    private readonly C3dShape _shape;
    private readonly List<Problem> _notices;

    private C3dFile(Stream stream, string file, C3dShape shape, C3dParameters parameters, C3dHeader header, List<Problem> notices)
    {
        _stream = stream;
        _shape = shape;
        _notices = notices;
        File = file;
        Parameters = parameters;
        PointLabels = Labels(parameters, "POINT", shape.Points, "POINT");
        AnalogLabels = Labels(parameters, "ANALOG", shape.Channels, "ANALOG");
        PointUnit = parameters.Find("POINT", "UNITS")?.Texts() is [{ Length: > 0 } unit, ..] ? unit : "mm";
        var units = parameters.Texts("ANALOG", "UNITS");
        AnalogUnits = [.. Enumerable.Range(0, shape.Channels).Select(channel => channel < units.Count ? units[channel] : "")];
        AnalogScales = C3dAnalogScale.Of(parameters, shape.Channels, file, notices);
        Events = C3dEvents.Of(parameters, header, shape, file, notices);
        Platforms = C3dPlatform.Of(parameters, shape.Channels, file, notices);
    }

    /// <summary>The file as the caller named it.</summary>
    public string File { get; }

    /// <summary>Byte order and kind of numbers.</summary>
    public C3dStorage Storage => _shape.Storage;

    /// <summary>All parameters.</summary>
    public C3dParameters Parameters { get; }

    /// <summary>Frames a second.</summary>
    public double RateHz => _shape.RateHz;

    /// <summary>Whole frames in the file.</summary>
    public long FrameCount => _shape.Frames;

    /// <summary>Number of the first frame in the recording from which the file was cut, from 1.</summary>
    public long FirstFrame => _shape.FirstFrame;

    /// <summary>A label for each point; points without one are named by their number.</summary>
    public IReadOnlyList<string> PointLabels { get; }

    /// <summary>Unit of points, plate corners and origins, as the file writes it; <c>mm</c> where it says nothing.</summary>
    public string PointUnit { get; }

    /// <summary>A label for each analog channel.</summary>
    public IReadOnlyList<string> AnalogLabels { get; }

    /// <summary>The unit of each analog channel as the file writes it; empty where it says nothing.</summary>
    public IReadOnlyList<string> AnalogUnits { get; }

    /// <summary>Analog samples of a channel in a frame.</summary>
    public int AnalogSamples => _shape.AnalogSamples;

    /// <summary>Samples a second of analog channels.</summary>
    public double AnalogRateHz => _shape.AnalogSamples * _shape.RateHz;

    /// <summary>Events by time.</summary>
    public IReadOnlyList<C3dEvent> Events { get; }

    /// <summary>Force platforms that can be used, by their number.</summary>
    public IReadOnlyList<C3dPlatform> Platforms { get; }

    /// <summary>What is odd and does not stand in the way.</summary>
    public IReadOnlyList<Problem> Notices => _notices;

    internal IReadOnlyList<C3dAnalogScale> AnalogScales { get; }

    internal C3dShape Shape => _shape;

    /// <summary>Opens a file.</summary>
    /// <param name="stream">Its bytes; closed with the file, or at once when there is none.</param>
    /// <param name="file">Its name in messages.</param>
    /// <returns>The file, or why it cannot be read. Bad input never throws.</returns>
    /// <exception cref="ArgumentException">The stream cannot seek.</exception>
    public static Outcome<C3dFile> Open(Stream stream, string file)
    {
        if (!stream.CanSeek)
            throw new ArgumentException("The stream must be able to seek.", nameof(stream));
        var opened = Read(stream, file);
        if (!opened.Succeeded(out _))
            stream.Dispose();
        return opened;
    }

    /// <summary>The frames, some thousands at a time, from the first one on each call. The arrays are used again: copy what is to stay.</summary>
    public IEnumerable<C3dFrames> Frames() => new C3dDecoder(_stream, this).Read();

    /// <summary>Closes the file.</summary>
    public void Dispose() => _stream.Dispose();

    private static Outcome<C3dFile> Read(Stream stream, string file)
    {
        var notices = new List<Problem>();
        var header = new byte[BlockBytes];
        stream.Position = 0;
        if (stream.ReadAtLeast(header, BlockBytes, throwOnEndOfStream: false) < BlockBytes)
            return C3dMessages.NotC3d(file, "less than 512 bytes");
        if (header[1] != Mark)
            return C3dMessages.NotC3d(file, $"the second byte 0x{header[1]:X2}");
        var sectionStart = (header[0] - 1L) * BlockBytes;
        if (header[0] < 2 || sectionStart + 4 > stream.Length)
            return C3dMessages.SectionOutside(file, header[0]);
        if (!ReadSection(stream, sectionStart, file, notices).Succeeded(out var section, out var problems))
            return Outcome<C3dFile>.Failed(problems);
        var order = (C3dByteOrder)section[3];
        var head = C3dHeader.Read(header, order);
        var parameters = C3dParameterReader.Read(section, order, file, notices);
        return C3dShape.Of(head, parameters, order, sectionStart, sectionStart + section.Length, stream.Length, file, notices).Succeeded(out var shape, out problems)
            ? new C3dFile(stream, file, shape, parameters, head, notices)
            : Outcome<C3dFile>.Failed(problems);
    }

    /// <summary>The bytes of the parameter section: at most 255 blocks. A section of no stated size ends with the file at the latest.</summary>
    private static Outcome<byte[]> ReadSection(Stream stream, long start, string file, List<Problem> notices)
    {
        Span<byte> head = stackalloc byte[4];
        stream.Position = start;
        stream.ReadExactly(head);
        if (!Enum.IsDefined((C3dByteOrder)head[3]))
            return C3dMessages.OrderUnknown(file, head[3]);
        var stated = (head[2] == 0 ? byte.MaxValue : head[2]) * (long)BlockBytes;
        var length = Math.Min(stated, stream.Length - start);
        if (length < stated && head[2] != 0)
            notices.Add(C3dMessages.SectionCut(file));
        var section = new byte[length];
        stream.Position = start;
        stream.ReadExactly(section);
        return section;
    }

    private static string[] Labels(C3dParameters parameters, string group, int count, string fallback)
    {
        var labels = parameters.Texts(group, "LABELS");
        return [.. Enumerable.Range(0, count).Select(i => i < labels.Count && labels[i].Length > 0 ? labels[i] : $"{fallback}{i + 1}")];
    }
}
