using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;

namespace SwingStudy.FalseClaims;

/// <summary>Runs the program's own stages from swings to findings in memory: noise, effects and trends player by player, then findings.</summary>
internal sealed class StageChain(bool statesWorthwhile)
{
    private static readonly string[] Names = ["noise", "effects", "trends", "findings"];

    private readonly BoundStage[] _stages = [.. Names.Select(name => Stages.All.Single(stage => stage.Declaration.Name == name).Bind(Declared.Setup(statesWorthwhile)))];

    /// <summary>The findings.</summary>
    public RowSet Findings(RowSet swings, RowSet captures, RowSet links)
    {
        var tables = new Dictionary<string, RowSet>(StringComparer.Ordinal) { ["swings"] = swings, ["captures"] = captures, ["links"] = links };
        foreach (var stage in _stages)
        {
            var units = stage.Declaration.Unit == UnitOfWork.Study ? [null] : swings.Texts("participant").Distinct(StringComparer.Ordinal).ToList();
            var results = units.Select(participant => stage.Run(Input(stage, participant, tables))).ToList();
            foreach (var output in stage.Outputs)
                tables[output.Key] = JoinedRows.Of(output.Value, [.. results.SelectMany(sets => sets).Where(set => set.Table.Name == output.Key)]);
        }

        return tables["findings"];
    }

    private static StageInput Input(BoundStage stage, string? participant, Dictionary<string, RowSet> tables)
    {
        var rows = stage.Inputs.ToDictionary(input => input.Table.Name, input => Shaped(input, tables.GetValueOrDefault(input.Table.Name), participant), StringComparer.Ordinal);
        return new StageInput(stage.Declaration, new WorkUnit(participant ?? WorkUnit.Study, participant, null, []), rows, stage.Outputs, []);
    }

    private static RowSet Shaped(BoundInput input, RowSet? rows, string? participant)
    {
        if (rows is null)
            return RowSet.Empty(input.Shape);
        if (input.Slice == Slice.SameParticipant)
        {
            var participants = rows.Texts("participant");
            rows = rows.Select([.. Enumerable.Range(0, rows.Count).Where(i => participants[i] == participant)]);
        }

        return new RowSet(input.Shape, [.. input.Shape.Columns.Select(column => rows[column.Name])]);
    }
}
