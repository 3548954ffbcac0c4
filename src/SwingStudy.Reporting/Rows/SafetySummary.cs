namespace SwingStudy.Reporting.Rows;

/// <summary>Adverse events, stops and loads of a study.</summary>
public sealed record SafetySummary
{
    /// <summary>Nothing on record.</summary>
    public static SafetySummary None { get; } = new();

    /// <summary>Adverse events, each in one sentence without names.</summary>
    public IReadOnlyList<ReportedIncident> Incidents { get; init; } = [];

    /// <summary>The player of each session in which somebody asked.</summary>
    public IReadOnlyList<string> Asked { get; init; } = [];

    /// <summary>Sessions that a rule stopped.</summary>
    public IReadOnlyList<ReportedIncident> Stops { get; init; } = [];

    /// <summary>Swings of each player.</summary>
    public IReadOnlyList<ReportedCount> Counts { get; init; } = [];
}
