using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>What a device recorded of one swing or moment, in canonical units and laboratory axes.</summary>
internal sealed record Recording
{
    /// <summary>Where it stands in the file, unique there: its first line, the line of its trigger, the position of its first column; 1 for a file of one recording.</summary>
    public required int Row { get; init; }

    /// <summary>Number of the device; null where there is none.</summary>
    public long? Sequence { get; init; }

    /// <summary>Name or code of the player; null when the file names nobody.</summary>
    public string? Alias { get; init; }

    /// <summary>Time of the first sample on the device's clock, milliseconds since 1970 UTC.</summary>
    public required long StartMillis { get; init; }

    /// <summary>What it is for.</summary>
    public required RecordingPurpose Purpose { get; init; }

    /// <summary>Contact, seconds from the first sample; null when the device does not say.</summary>
    public double? ContactSeconds { get; init; }

    /// <summary>The curves, in the order of <see cref="Domain.Curves.Channels.Names"/>; all start at the first sample.</summary>
    public required IReadOnlyList<RecordedCurve> Curves { get; init; }

    /// <summary>Events that the device marked, by time.</summary>
    public IReadOnlyList<RecordedEvent> Events { get; init; } = [];

    /// <summary>Lines of text that its samples stand on; 1 for a binary file.</summary>
    public required long Lines { get; init; }
}
