using Parquet;
using Parquet.Data;
using Parquet.Schema;

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
        using var raw = Raw(field);
        var levels = field.MaxDefinitionLevel > 0 ? raw.DefinitionLevels : [];
        var next = 0;
        for (var row = 0; row < _rows; row++)
        {
            if (!levels.IsEmpty && levels[row] != field.MaxDefinitionLevel)
                continue;
            numbers[row] = raw switch
            {
                RawColumnData<long> longs => longs.Values[next],
                RawColumnData<int> ints => ints.Values[next],
                _ => throw new InvalidDataException($"The column {path} of a checkpoint holds {field.ClrType.Name}; whole numbers were expected."),
            };
            next++;
        }

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
        using var raw = Raw(field) as RawColumnData<ReadOnlyMemory<char>> ?? throw new InvalidDataException($"The column {field.Path} of a checkpoint holds {field.ClrType.Name}; texts were expected.");
        var definition = field.MaxDefinitionLevel > 0 ? raw.DefinitionLevels : [];
        var repetition = field.MaxRepetitionLevel > 0 ? raw.RepetitionLevels : [];
        var values = raw.Values;
        var rows = new List<string?>[_rows];
        int row = -1, next = 0;
        for (var entry = 0; entry < (definition.IsEmpty ? _rows : definition.Length); entry++)
        {
            if (repetition.IsEmpty || repetition[entry] == 0)
                rows[++row] = [];
            if (definition.IsEmpty || definition[entry] == field.MaxDefinitionLevel)
                rows[row].Add(new string(values[next++].Span));
            else if (field.IsNullable && definition[entry] == field.MaxDefinitionLevel - 1 && field.MaxRepetitionLevel > 0)
                rows[row].Add(null);
        }

        return rows;
    }

    private RawColumnData Raw(DataField field) => group.ReadRawColumnDataBaseAsync(field, CancellationToken.None).AsTask().GetAwaiter().GetResult();
}
