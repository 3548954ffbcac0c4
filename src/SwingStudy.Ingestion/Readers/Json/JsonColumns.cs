namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The keys of all records as a tree, each leaf a column with a dotted heading.</summary>
internal sealed class JsonColumns
{
    private readonly List<string> _paths = [];

    /// <summary>The level of the record itself.</summary>
    public JsonKey Root { get; } = new("");

    /// <summary>Dotted headings in the order in which they first occur.</summary>
    public IReadOnlyList<string> Paths => _paths;

    /// <summary>The column of a key that holds a value; a new one when it holds one for the first time and <paramref name="mayAdd"/>.</summary>
    public int ColumnOf(JsonKey key, bool mayAdd)
    {
        if (key.Column < 0 && mayAdd && _paths.Count <= ReaderLimits.Columns)
        {
            key.Column = _paths.Count;
            _paths.Add(key.Path);
        }

        return key.Column;
    }
}
