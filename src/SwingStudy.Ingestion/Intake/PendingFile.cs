using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>A file that is taken once its rows are committed.</summary>
internal sealed record PendingFile(
    Candidate Candidate,
    IntakeFile Record,
    IReadOnlyList<DataFile> Captures,
    IReadOnlyList<DataFile> Rejects,
    IReadOnlyList<SessionRecord> Sessions,
    FileResult Result)
{
    /// <summary>Data files of curves.</summary>
    public IReadOnlyList<DataFile> Curves { get; init; } = [];

    /// <summary>Data files of events.</summary>
    public IReadOnlyList<DataFile> Events { get; init; } = [];
}
