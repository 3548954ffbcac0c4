using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

/// <summary>All tables of the analysis, made of swings in memory by the stages one after another.</summary>
internal static class Analysis
{
    public static Dictionary<string, RowSet> Of(IEnumerable<PlayedSwing> played, StudySetup? setup = null, params RowSet[] more)
    {
        var tables = more.ToDictionary(rows => rows.Table.Name);
        tables["swings"] = PlayedSwing.Swings(played, setup?.Dictionary);
        foreach (var name in new[] { "noise", "effects", "trends" })
            tables[name] = JoinedRows.Of(Definition(name), [.. played.Select(swing => swing.Participant).Distinct().Order().Select(player => Of(name, player, tables, setup))]);
        tables["findings"] = Body.Run("findings", "findings", tables.Values.ToList(), setup: setup);
        tables["group_effects"] = Body.Run("findings", "group_effects", tables.Values.ToList(), setup: setup);
        return tables;
    }

    private static RowSet Of(string stage, string participant, Dictionary<string, RowSet> tables, StudySetup? setup)
    {
        var swings = tables["swings"];
        var own = swings.Select([.. Enumerable.Range(0, swings.Count).Where(i => swings.Texts("participant")[i] == participant)]);
        return Body.Run(stage, stage, [own, .. tables.Values.Where(rows => rows.Table.Name is not "swings")], setup: setup, participant: participant);
    }

    private static TableDefinition Definition(string name) => StudyTables.All(Some.Dictionary).Single(table => table.Name == name);
}
