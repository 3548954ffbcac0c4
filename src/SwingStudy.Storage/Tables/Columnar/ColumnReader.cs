using Parquet;
using Parquet.Schema;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Parquet column chunks to columns in memory.</summary>
internal static class ColumnReader
{
    private const int MostSharedTexts = 4096;

    /// <summary>Reads one column of a row group.</summary>
    /// <exception cref="InvalidDataException">The file holds another type than the table declares.</exception>
    internal static Column Read(ParquetRowGroupReader group, DataField field, ColumnDefinition column)
    {
        var rows = checked((int)group.RowCount);
        return column.Kind switch
        {
            ColumnKind.Text => new TextColumn(Texts(group, field, rows)),
            ColumnKind.Number => new NumberColumn(Numbers(group, field, rows)),
            ColumnKind.Integer => new IntegerColumn(Present(RawColumn<long>.Read(group, field), rows)),
            ColumnKind.Boolean => new BooleanColumn(Present(RawColumn<bool>.Read(group, field), rows)),
            ColumnKind.Instant => new InstantColumn(Instants(group, field, rows)),
            ColumnKind.NumberList => new NumberListColumn(Lists(group, field, rows)),
            _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
        };
    }

    private static string?[] Texts(ParquetRowGroupReader group, DataField field, int rows)
    {
        var texts = new string?[rows];
        group.ReadAsync(field, texts!.AsMemory()!, null, CancellationToken.None).AsTask().GetAwaiter().GetResult();
        Share(texts);
        return texts;
    }

    /// <summary>Equal texts become one object, so that a column of five club names does not hold a million strings.</summary>
    private static void Share(string?[] texts)
    {
        var shared = new Dictionary<string, string>(StringComparer.Ordinal);
        string? last = null;
        for (var i = 0; i < texts.Length; i++)
        {
            if (texts[i] is not { } text)
                continue;
            if (text == last)
            {
                texts[i] = last;
                continue;
            }

            if (shared.TryGetValue(text, out var first))
                texts[i] = first;
            else if (shared.Count < MostSharedTexts)
                shared.Add(text, text);
            else if (i < 2 * MostSharedTexts)
                return;
            last = texts[i];
        }
    }

    private static double[] Numbers(ParquetRowGroupReader group, DataField field, int rows)
    {
        using var raw = RawColumn<double>.Read(group, field);
        return Spread(raw, rows, double.NaN);
    }

    private static long[] Instants(ParquetRowGroupReader group, DataField field, int rows)
    {
        using var raw = RawColumn<long>.Read(group, field);
        var millis = Spread(raw, rows, InstantColumn.MissingMillis);
        for (var i = 0; i < rows; i++)
        {
            if (millis[i] != InstantColumn.MissingMillis)
                millis[i] = ParquetShape.Millis(millis[i]);
        }

        return millis;
    }

    private static T[] Spread<T>(RawColumn<T> raw, int rows, T missing)
        where T : struct
    {
        var present = raw.Values;
        if (raw.DefinitionLevels.IsEmpty)
            return present[..rows].ToArray();
        var values = new T[rows];
        var next = 0;
        for (var i = 0; i < rows; i++)
            values[i] = raw.HasValue(i) ? present[next++] : missing;
        return values;
    }

    private static T?[] Present<T>(RawColumn<T> raw, int rows)
        where T : struct
    {
        using (raw)
        {
            var values = new T?[rows];
            var next = 0;
            for (var i = 0; i < rows; i++)
                values[i] = raw.HasValue(i) ? raw.Values[next++] : null;
            return values;
        }
    }

    private static double[]?[] Lists(ParquetRowGroupReader group, DataField field, int rows)
    {
        using var raw = RawColumn<double>.Read(group, field);
        var lists = new double[]?[rows];
        var values = raw.Values;
        var definition = raw.DefinitionLevels;
        var repetition = raw.RepetitionLevels;
        int row = -1, next = 0;
        for (var entry = 0; entry < definition.Length;)
        {
            row++;
            var end = entry + 1;
            while (end < definition.Length && repetition[end] != 0)
                end++;
            if (definition[entry] == 1)
                lists[row] = [];
            else if (definition[entry] > 1)
                lists[row] = Samples(values, definition[entry..end], ref next);
            entry = end;
        }

        return lists;
    }

    private static double[] Samples(ReadOnlySpan<double> values, ReadOnlySpan<int> levels, ref int next)
    {
        var samples = new double[levels.Length];
        for (var i = 0; i < samples.Length; i++)
            samples[i] = levels[i] == 3 ? values[next++] : double.NaN;
        return samples;
    }
}
