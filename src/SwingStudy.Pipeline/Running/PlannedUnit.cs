using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>A unit that has to be computed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Files">For each input, the files that concern it.</param>
/// <param name="Decisions">Decisions it sees.</param>
/// <param name="Hash">Hash of all it depends on.</param>
internal sealed record PlannedUnit(WorkUnit Unit, IReadOnlyList<DataFile>[] Files, IReadOnlyList<Decision> Decisions, Sha256 Hash);
