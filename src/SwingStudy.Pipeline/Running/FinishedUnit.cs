using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>A unit that was computed and whose files are written.</summary>
internal sealed record FinishedUnit(
    WorkUnit Unit, Sha256 Hash, IReadOnlyList<(string Table, DataFile File)> Written, Instant StartedAt, Instant FinishedAt)
{
    /// <summary>Its entry in the registry.</summary>
    public StageRun AsRun(StageDeclaration stage, string runId) => new(
        runId, stage.Name, Unit.Name, Hash, [.. Written.Select(file => $"{file.Table}/{file.File.Path}")], stage.CodeVersion, StartedAt, FinishedAt);
}
