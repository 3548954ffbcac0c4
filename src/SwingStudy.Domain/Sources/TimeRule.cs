namespace SwingStudy.Domain.Sources;

/// <summary>Where the time of a row stands and how it is written.</summary>
public sealed record TimeRule
{
    /// <summary>Places whose texts are joined with one blank, in order: a date and a time, or one of both.</summary>
    public required IReadOnlyList<FieldSource> Parts { get; init; }

    /// <summary>
    /// A pattern of the letters <c>y M d H h m s f t</c> (as in <c>dd.MM.yyyy HH:mm:ss</c>), or one of <c>iso</c>, <c>unix-s</c>, <c>unix-ms</c>,
    /// <c>excel-serial</c>; null: detected from all rows, and the file is held when more than one pattern fits.
    /// </summary>
    public string? Format { get; init; }

    /// <summary>IANA zone of naive local times; null for formats that carry an offset or an epoch.</summary>
    public string? Zone { get; init; }

    /// <summary>Seconds that the device logs after the moment meant: subtracted to give <c>struck_at</c>.</summary>
    public double DelaySeconds { get; init; }
}
