using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What the rows of a coach's log change in the registry.</summary>
internal sealed class SessionChanges
{
    /// <summary>Sessions that are new or corrected.</summary>
    public List<SessionRecord> Sessions { get; } = [];

    /// <summary>What the corrections change.</summary>
    public List<RowRevision> Revisions { get; } = [];

    /// <summary>Rows that say what the registry has.</summary>
    public long Repeats { get; set; }
}
