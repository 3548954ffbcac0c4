using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>Values computed from curves as values of swings, where no device delivered the variable.</summary>
/// <remarks>Within a session a variable comes from devices or from curves, never from both: another definition must not fill the gaps of the first.</remarks>
internal static class ComputedValues
{
    /// <summary>Fills columns that no capture of the session fills. Columns are replaced, never changed.</summary>
    /// <param name="table">The table of measures.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="computed">Rows of <c>curve_measures</c>.</param>
    /// <param name="swings">The swings, in the order of the rows.</param>
    public static void Fill(TableDefinition table, List<Column> columns, RowSet computed, IReadOnlyList<string> swings)
    {
        var rowOf = swings.Select((id, i) => (id, i)).ToDictionary(pair => pair.id, pair => pair.i, StringComparer.Ordinal);
        var (ids, variables, values, texts) = (computed.Texts("swing_id"), computed.Texts("variable"), computed.Numbers("value"), computed.Texts("text"));
        foreach (var own in Enumerable.Range(0, computed.Count).GroupBy(i => variables[i]!, StringComparer.Ordinal))
        {
            var position = table.Columns.Select((column, i) => (column.Name, i)).Where(pair => pair.Name == own.Key).Select(pair => pair.i).DefaultIfEmpty(-1).First();
            if (position < 0 || Enumerable.Range(0, swings.Count).Any(row => !columns[position].IsMissing(row)))
                continue;
            if (columns[position] is NumberColumn)
            {
                var filled = new double[swings.Count];
                Array.Fill(filled, double.NaN);
                foreach (var i in own)
                    filled[rowOf[ids[i]!]] = values[i];
                columns[position] = new NumberColumn(filled);
            }
            else if (columns[position] is TextColumn)
            {
                var filled = new string?[swings.Count];
                foreach (var i in own)
                    filled[rowOf[ids[i]!]] = texts[i];
                columns[position] = new TextColumn(filled);
            }
        }
    }
}
