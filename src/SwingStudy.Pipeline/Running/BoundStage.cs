using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>A stage with the settings and tables of one study.</summary>
/// <param name="Declaration">What the stage says about itself.</param>
/// <param name="Inputs">Tables it reads.</param>
/// <param name="Outputs">Tables it writes, by name.</param>
/// <param name="Settings">Its settings as JSON.</param>
/// <param name="Run">Does one unit of work.</param>
internal sealed record BoundStage(
    StageDeclaration Declaration,
    IReadOnlyList<BoundInput> Inputs,
    IReadOnlyDictionary<string, TableDefinition> Outputs,
    string Settings,
    Func<StageInput, IReadOnlyList<RowSet>> Run);
