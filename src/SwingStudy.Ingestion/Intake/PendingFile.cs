using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>A file that is taken once its rows are committed.</summary>
internal sealed record PendingFile(Candidate Candidate, IntakeFile Record, TableRows Rejects, IReadOnlyList<SessionRecord> Sessions, FileResult Result)
{
    /// <summary>Captures, curves and events.</summary>
    public RecordingData Data { get; init; } = RecordingData.None;
}
