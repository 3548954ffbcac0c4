using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Masking;

/// <summary>The mask as SQL expressions over the columns of one table.</summary>
internal static class MaskedSql
{
    /// <summary>Expressions by column; columns that are shown as they are have none.</summary>
    public static IReadOnlyDictionary<string, string> Of(TableDefinition table, IReadOnlyList<MaskedName> names)
    {
        var expressions = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var column in table.Columns)
        {
            if (Expression(MaskedColumns.Of(table, column.Name), column.Name, names) is { } expression)
                expressions[column.Name] = expression;
        }

        return expressions;
    }

    private static string? Expression(MaskRule rule, string column, IReadOnlyList<MaskedName> names) => rule switch
    {
        MaskRule.Plain => null,
        MaskRule.PhaseCode => Coded(column, MaskedName.Phase, names),
        MaskRule.ContrastCode => Coded(column, MaskedName.Contrast, names),
        MaskRule.CueCode => Coded(column, MaskedName.Cue, names),
        MaskRule.Size => Symmetric("abs(estimate)"),
        MaskRule.LowOfSize => Symmetric("CASE WHEN estimate < 0 THEN -ci_high ELSE ci_low END"),
        MaskRule.HighOfSize => Symmetric("CASE WHEN estimate < 0 THEN -ci_low ELSE ci_high END"),
        _ => "NULL",
    };

    private static string Symmetric(string expression) => $"CASE WHEN measure IN ({string.Join(", ", MaskedColumns.Symmetric.Select(Literal))}) THEN {expression} END";

    private static string Coded(string column, string kind, IReadOnlyList<MaskedName> names)
    {
        var cases = names.Where(name => name.Kind == kind).Select(name => $"WHEN {Literal(name.Name)} THEN {Literal(name.Code)}").ToList();
        return cases.Count == 0 ? "NULL" : $"CASE \"{column}\" {string.Join(' ', cases)} END";
    }

    private static string Literal(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
