namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>What is to be written as a C3D file.</summary>
public sealed record C3dRecording
{
    /// <summary>Frames a second.</summary>
    public required double RateHz { get; init; }

    /// <summary>Number of the first frame in the recording from which this is a part, from 1.</summary>
    public int FirstFrame { get; init; } = 1;

    /// <summary>Unit of points, corners and origins.</summary>
    public string PointUnit { get; init; } = "mm";

    /// <summary>Points, all of one length.</summary>
    public IReadOnlyList<C3dPoint> Points { get; init; } = [];

    /// <summary>Analog channels, all of one length: frames times <see cref="AnalogSamples"/>.</summary>
    public IReadOnlyList<C3dAnalog> Analog { get; init; } = [];

    /// <summary>Analog samples a channel and frame.</summary>
    public int AnalogSamples { get; init; } = 1;

    /// <summary>Whether 16-bit analog integers are written unsigned, with 32768 for zero.</summary>
    public bool IsAnalogUnsigned { get; init; }

    /// <summary>Events, seconds from the first frame written.</summary>
    public IReadOnlyList<C3dEvent> Events { get; init; } = [];

    /// <summary>Force platforms; their channels count from 0 among <see cref="Analog"/>.</summary>
    public IReadOnlyList<C3dPlatform> Platforms { get; init; } = [];

    /// <summary>Other texts, by group and name: who, when, where.</summary>
    public IReadOnlyDictionary<(string Group, string Name), IReadOnlyList<string>> Texts { get; init; } = new Dictionary<(string, string), IReadOnlyList<string>>();

    /// <summary>Frames: as long as the points are, or the analog channels without points.</summary>
    public int FrameCount => Points.Count > 0 ? Points[0].X.Length : Analog.Count > 0 ? Analog[0].Values.Length / AnalogSamples : 0;
}
