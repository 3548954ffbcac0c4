using Parquet;
using Parquet.Schema;
using SwingStudy.Storage.Tables.Columnar;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>The columns of one row group of a checkpoint, by the names of the Delta protocol; a column that the file lacks is missing in every row.</summary>
/// <remarks>Checkpoints are read at every start of the program; mapping rows to objects would compile the mapping each time.</remarks>
internal sealed class CheckpointColumns(ParquetRowGroupReader group, ParquetSchema schema)
{
    private readonly int _rows = checked((int)group.RowCount);

    /// <summary>Number of rows.</summary>
    public int Rows => _rows;

    /// <summary>Texts of a member of an action, such as <c>add/path</c>; null where the row is another action.</summary>
    public string?[] Texts(string path)
    {
        var texts = new string?[_rows];
        if (Find(path) is { } field)
        {
            var lists = Entries(field);
            for (var row = 0; row < _rows; row++)
                texts[row] = lists[row] is [var text] ? text : null;
        }

        return texts;
    }

    /// <summary>Whole numbers of a member of an action; null where the row is another action.</summary>
    public long?[] Numbers(string path)
    {
        var numbers = new long?[_rows];
        if (Find(path) is not { } field)
            return numbers;
        if (field.ClrType == typeof(int))
            Fill<int>(field, numbers, number => number);
        else if (field.ClrType == typeof(long))
            Fill<long>(field, numbers, number => number);
        else
            throw new InvalidDataException($"The column {path} of a checkpoint holds {field.ClrType.Name}; whole numbers were expected.");
        return numbers;
    }

    /// <summary>Lists of texts, row by row; empty where a row has none.</summary>
    public IReadOnlyList<string?>[] Lists(string path) => Under(path) is [var field, ..] ? Entries(field) : None();

    /// <summary>Maps of texts, row by row; empty where a row has none.</summary>
    public IReadOnlyDictionary<string, string?>[] Maps(string path)
    {
        var (keys, values) = Under(path) is [var key, var value, ..] ? (Entries(key), Entries(value)) : (None(), None());
        return [.. keys.Zip(values, (names, texts) => names.Zip(texts).ToDictionary(pair => pair.First!, pair => pair.Second, StringComparer.Ordinal))];
    }

    private DataField? Find(string path) => schema.DataFields.FirstOrDefault(field => string.Join('/', field.Path.ToList()) == path);

    private List<DataField> Under(string path) => [.. schema.DataFields.Where(field => string.Join('/', field.Path.ToList()).StartsWith(path + "/", StringComparison.Ordinal))];

    private IReadOnlyList<string?>[] None() => [.. Enumerable.Repeat<IReadOnlyList<string?>>([], _rows)];

    /// <summary>The texts of each row: one or none of a plain column, any number of a list or map. An entry without a text is null.</summary>
    private IReadOnlyList<string?>[] Entries(DataField field)
    {
        if (field.ClrType != typeof(ReadOnlyMemory<char>))
            throw new InvalidDataException($"The column {field.Path} of a checkpoint holds {field.ClrType}; texts were expected.");
        using var raw = RawColumn<ReadOnlyMemory<char>>.Read(group, field);
        var (entries, next, row) = (raw.Values.Length, 0, -1);
        var rows = new List<string?>[_rows];
        for (var entry = 0; entry < entries; entry++)
        {
            if (raw.RepetitionLevels.IsEmpty || raw.RepetitionLevels[entry] == 0)
                rows[++row] = [];
            if (raw.HasValue(entry))
                rows[row].Add(new string(raw.Values[next++].Span));
            else if (field.IsNullable && field.MaxRepetitionLevel > 0 && raw.DefinitionLevels[entry] == field.MaxDefinitionLevel - 1)
                rows[row].Add(null);
        }

        return rows;
    }

    private void Fill<T>(DataField field, long?[] numbers, Func<T, long> number)
        where T : struct
    {
        using var raw = RawColumn<T>.Read(group, field);
        var next = 0;
        for (var row = 0; row < _rows; row++)
        {
            if (raw.HasValue(row))
                numbers[row] = number(raw.Values[next++]);
        }
    }
}
