using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Measure;

/// <summary>Fills in derived variables.</summary>
internal static class DerivedValues
{
    /// <summary>Computes what is missing and can be computed. Columns are replaced, never changed.</summary>
    /// <param name="table">The table, for the names of columns.</param>
    /// <param name="columns">Its columns.</param>
    public static void Fill(TableDefinition table, List<Column> columns)
    {
        var positions = table.Columns.Select((column, i) => (column.Name, column.Kind, i)).Where(column => column.Kind == ColumnKind.Number).ToDictionary(pair => pair.Name, pair => pair.i, StringComparer.Ordinal);
        foreach (var derived in DerivedVariable.All)
        {
            if (positions.TryGetValue(derived.Name, out var target) && derived.Needs.All(positions.ContainsKey))
            {
                var needs = derived.Needs.Select(name => ((NumberColumn)columns[positions[name]]).Values).ToArray();
                columns[target] = new NumberColumn(Filled(derived, ((NumberColumn)columns[target]).Values, needs));
            }
        }
    }

    private static double[] Filled(DerivedVariable derived, double[] read, double[][] needs)
    {
        var filled = new double[read.Length];
        Span<double> values = stackalloc double[needs.Length];
        for (var row = 0; row < read.Length; row++)
        {
            filled[row] = read[row];
            if (!double.IsNaN(read[row]))
                continue;
            var missing = false;
            for (var i = 0; i < needs.Length; i++)
            {
                values[i] = needs[i][row];
                missing |= double.IsNaN(values[i]);
            }

            var computed = missing ? double.NaN : derived.Compute(values);
            filled[row] = double.IsFinite(computed) ? computed : double.NaN;
        }

        return filled;
    }
}
