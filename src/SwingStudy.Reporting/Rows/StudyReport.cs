using NodaTime;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Reporting.Rows;

/// <summary>All that a report is made from. The same report always gives the same bytes.</summary>
public sealed record StudyReport
{
    /// <summary>Name of the study.</summary>
    public required string Name { get; init; }

    /// <summary>Zone in which days are told.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>The protocol.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>The dictionary.</summary>
    public required VariableDictionary Dictionary { get; init; }

    /// <summary>Rows of the tables.</summary>
    public required ReportTables Tables { get; init; }

    /// <summary>Files and lines, from the registry.</summary>
    public required IntakeCounts Intake { get; init; }

    /// <summary>Table and the version whose rows these are, in the order to be shown.</summary>
    public required IReadOnlyList<(string Table, long Version)> Versions { get; init; }

    /// <summary>What the method words of the tables mean, from the catalogue of statistics.</summary>
    public IReadOnlyList<MethodNote> Methods { get; init; } = [];

    /// <summary>The versions of the protocol.</summary>
    public ProtocolHistory History { get; init; } = ProtocolHistory.None;

    /// <summary>Players on record, those who have withdrawn among them.</summary>
    public int Enrolled { get; init; }

    /// <summary>Players on record who have withdrawn.</summary>
    public int Withdrawn { get; init; }

    /// <summary>When the protocol was locked; null while it is not.</summary>
    public Instant? LockedAt { get; init; }

    /// <summary>Adverse events, stops and loads.</summary>
    public SafetySummary Safety { get; init; } = SafetySummary.None;
}
