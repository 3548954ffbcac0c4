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
    FileResult Result);
