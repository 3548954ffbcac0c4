using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>One row of clocks: a stretch of a device's clock in a session.</summary>
internal sealed record ClockRow(PlayerSession Session, DeviceRecords Device, string ReferenceSource, string Method)
{
    /// <summary>The clock that the others are told against.</summary>
    public const string Reference = "reference";

    /// <summary>A constant offset.</summary>
    public const string Offset = "offset";

    /// <summary>An offset that changes evenly.</summary>
    public const string OffsetAndDrift = "offset-and-drift";

    /// <summary>Too few records, or more than one offset fits.</summary>
    public const string NotMade = "not-made";

    public required long FromMillis { get; init; }

    public required long ToMillis { get; init; }

    public required ClockLine Line { get; init; }

    public double ResidualRms { get; init; } = double.NaN;

    public int Matched { get; init; }

    public int? Missed { get; init; }

    public int? Extra { get; init; }

    public required double Confidence { get; init; }

    public double? RivalSeconds { get; init; }

    public int? RivalMatched { get; init; }
}
