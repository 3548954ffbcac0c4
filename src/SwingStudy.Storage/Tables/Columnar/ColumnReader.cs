using Parquet;
using Parquet.Data;
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
            ColumnKind.Integer => new IntegerColumn(Present(Raw<long>(group, field, column), rows)),
            ColumnKind.Boolean => new BooleanColumn(Present(Raw<bool>(group, field, column), rows)),
            ColumnKind.Instant => new InstantColumn(Instants(group, field, rows)),
            ColumnKind.NumberList => new NumberListColumn(Lists(group, field, column, rows)),
            _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
        };
    }

    private static RawColumnData<T> Raw<T>(ParquetRowGroupReader group, DataField field, ColumnDefinition column)
        where T : struct
    {
        var raw = group.ReadRawColumnDataBaseAsync(field, CancellationToken.None).AsTask().GetAwaiter().GetResult();
        return raw as RawColumnData<T>
            ?? throw new InvalidDataException($"Column '{column.Name}' of the file holds {field.ClrType.Name}, the table says {column.Kind}.");
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
        using var raw = Raw<double>(group, field, new ColumnDefinition(field.Name, ColumnKind.Number, field.Name));
        return Spread(raw.Values, raw.DefinitionLevels, field.MaxDefinitionLevel, rows, double.NaN);
    }

    private static long[] Instants(ParquetRowGroupReader group, DataField field, int rows)
    {
        using var raw = Raw<long>(group, field, new ColumnDefinition(field.Name, ColumnKind.Instant, field.Name));
        var millis = Spread<long>(raw.Values, raw.DefinitionLevels, field.MaxDefinitionLevel, rows, InstantColumn.MissingMillis);
        for (var i = 0; i < rows; i++)
        {
            if (millis[i] != InstantColumn.MissingMillis)
                millis[i] = ParquetShape.Millis(millis[i]);
        }

        return millis;
    }

    private static T[] Spread<T>(ReadOnlySpan<T> present, ReadOnlySpan<int> levels, int whole, int rows, T missing)
    {
        if (levels.IsEmpty)
            return present.ToArray();
        var values = new T[rows];
        var next = 0;
        for (var i = 0; i < rows; i++)
            values[i] = levels[i] == whole ? present[next++] : missing;
        return values;
    }

    private static T?[] Present<T>(RawColumnData<T> raw, int rows)
        where T : struct
    {
        using (raw)
        {
            var levels = raw.DefinitionLevels;
            var values = new T?[rows];
            var next = 0;
            for (var i = 0; i < rows; i++)
                values[i] = levels.IsEmpty || levels[i] != 0 ? raw.Values[next++] : null;
            return values;
        }
    }

    private static double[]?[] Lists(ParquetRowGroupReader group, DataField field, ColumnDefinition column, int rows)
    {
        using var raw = Raw<double>(group, field, column);
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
