namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>A key at its place in a record.</summary>
internal sealed class JsonKey(string path)
{
    private readonly Dictionary<string, JsonKey> _children = new(StringComparer.Ordinal);

    /// <summary>Keys from the record down to this one, joined by dots.</summary>
    public string Path { get; } = path;

    /// <summary>Its column; -1 while it only holds further keys.</summary>
    public int Column { get; set; } = -1;

    /// <summary>The key below it of that name.</summary>
    public JsonKey Child(ReadOnlySpan<char> name)
    {
        var children = _children.GetAlternateLookup<ReadOnlySpan<char>>();
        if (children.TryGetValue(name, out var child))
            return child;
        child = new JsonKey(Path.Length == 0 ? name.ToString() : $"{Path}.{name}");
        children[name] = child;
        return child;
    }
}
