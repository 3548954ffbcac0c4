using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>One unit of work of one stage, done.</summary>
/// <param name="RunId">The run it belongs to.</param>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Unit">Session, player or study.</param>
/// <param name="InputHash">Hash of all it depends on.</param>
/// <param name="Outputs">Files it wrote: <c>table/path</c>.</param>
/// <param name="CodeVersion">Version of the stage's code.</param>
/// <param name="StartedAt">Start.</param>
/// <param name="FinishedAt">End.</param>
public sealed record StageRun(
    string RunId,
    string Stage,
    string Unit,
    Sha256 InputHash,
    IReadOnlyList<string> Outputs,
    string CodeVersion,
    Instant StartedAt,
    Instant FinishedAt);
