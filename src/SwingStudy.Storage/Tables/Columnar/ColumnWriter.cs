using Parquet;
using Parquet.Schema;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Columns in memory to Parquet column chunks: values without gaps, and levels that tell where the gaps are.</summary>
internal static class ColumnWriter
{
    /// <summary>Writes one column into the open row group.</summary>
    internal static void Write(ParquetRowGroupWriter group, DataField field, Column column)
    {
        var written = column switch
        {
            TextColumn text => group.WriteAsync(field, text.Values),
            NumberColumn numbers => WriteNumbers(group, field, numbers.Values),
            IntegerColumn integers => group.WriteAsync<long>(field, integers.Values),
            BooleanColumn booleans => group.WriteAsync<bool>(field, booleans.Values),
            InstantColumn instants => WriteInstants(group, field, instants.UnixMillis),
            NumberListColumn lists => WriteLists(group, field, lists.Values),
            _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
        };
        written.GetAwaiter().GetResult();
    }

    private static Task WriteNumbers(ParquetRowGroupWriter group, DataField field, double[] values)
    {
        var levels = new int[values.Length];
        var present = new double[values.Length];
        var count = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var value = values[i];
            if (double.IsNaN(value))
                continue;
            levels[i] = 1;
            present[count++] = double.IsFinite(value) ? value : throw new ArgumentException($"Column {field.Name} holds an infinite number in row {i}.");
        }

        return group.WriteAllPartsAsync<double>(field, present.AsMemory(0, count), levels, null, CancellationToken.None);
    }

    private static Task WriteInstants(ParquetRowGroupWriter group, DataField field, long[] unixMillis)
    {
        var levels = new int[unixMillis.Length];
        var present = new long[unixMillis.Length];
        var count = 0;
        for (var i = 0; i < unixMillis.Length; i++)
        {
            if (unixMillis[i] == InstantColumn.MissingMillis)
                continue;
            levels[i] = 1;
            present[count++] = ParquetShape.Micros(unixMillis[i]);
        }

        return group.WriteAllPartsAsync<long>(field, present.AsMemory(0, count), levels, null, CancellationToken.None);
    }

    /// <summary>Levels of a list: 0 no list, 1 an empty list, 2 a lost sample, 3 a sample.</summary>
    private static Task WriteLists(ParquetRowGroupWriter group, DataField field, double[]?[] lists)
    {
        var entries = lists.Sum(list => Math.Max(1, list?.Length ?? 0));
        var definition = new int[entries];
        var repetition = new int[entries];
        var present = new double[entries];
        int entry = 0, count = 0;
        foreach (var list in lists)
        {
            if (list is null or { Length: 0 })
            {
                definition[entry++] = list is null ? 0 : 1;
                continue;
            }

            for (var i = 0; i < list.Length; i++, entry++)
            {
                repetition[entry] = i == 0 ? 0 : 1;
                definition[entry] = double.IsNaN(list[i]) ? 2 : 3;
                if (!double.IsNaN(list[i]))
                    present[count++] = list[i];
            }
        }

        return group.WriteAllPartsAsync<double>(field, present.AsMemory(0, count), definition, repetition, CancellationToken.None);
    }
}
