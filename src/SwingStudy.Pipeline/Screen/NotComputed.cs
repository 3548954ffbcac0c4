using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Screen;

/// <summary>Variables that curves should have given and did not become flags, with the reason.</summary>
internal static class NotComputed
{
    /// <summary>The <c>rule</c> of these flags.</summary>
    public const string Word = "not-computed";

    /// <summary>One flag for each outcome of the protocol without a value; other variables that lack one for the same reason share a flag.</summary>
    /// <param name="computed">Rows of <c>curve_measures</c>.</param>
    /// <param name="measures">Rows of <c>measures</c>: a value that a device delivered needs none from curves.</param>
    /// <param name="outcomes">Outcomes of the protocol.</param>
    public static IEnumerable<Flag> Flags(RowSet computed, RowSet measures, IReadOnlyList<string> outcomes)
    {
        var rowOf = measures.Texts("swing_id").Select((id, i) => (id, i)).ToDictionary(pair => pair.id!, pair => pair.i, StringComparer.Ordinal);
        var columns = measures.Table.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        var (swings, variables, reasons) = (computed.Texts("swing_id"), computed.Texts("variable"), computed.Texts("reason"));
        var missing = Enumerable.Range(0, computed.Count)
            .Where(i => reasons[i] is not null && columns.Contains(variables[i]!) && rowOf.TryGetValue(swings[i]!, out var row) && measures[variables[i]!].IsMissing(row))
            .Select(i => (Swing: swings[i]!, Variable: variables[i]!, Reason: reasons[i]!)).ToList();
        foreach (var group in missing.GroupBy(gap => (gap.Swing, gap.Reason)).OrderBy(group => group.Key.Swing, StringComparer.Ordinal).ThenBy(group => group.Key.Reason, StringComparer.Ordinal))
        {
            foreach (var gap in group.Where(gap => outcomes.Contains(gap.Variable)).OrderBy(gap => gap.Variable, StringComparer.Ordinal))
                yield return new Flag(gap.Swing, null, gap.Variable, Word, Flag.Keep, gap.Reason, Flag.ByRule);
            List<string> others = [.. group.Select(gap => gap.Variable).Where(variable => !outcomes.Contains(variable)).Order(StringComparer.Ordinal)];
            if (others.Count == 1)
                yield return new Flag(group.Key.Swing, null, others[0], Word, Flag.Keep, group.Key.Reason, Flag.ByRule);
            else if (others.Count > 1)
                yield return new Flag(group.Key.Swing, null, null, Word, Flag.Keep, $"{group.Key.Reason}: {string.Join(", ", others)}", Flag.ByRule);
        }
    }
}
