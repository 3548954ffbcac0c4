namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>Texts of one column of a block in little room: a place among the distinct texts stands for each, unless hardly any repeats.</summary>
internal sealed class PackedTexts
{
    private const int RowsPerDistinct = 4;
    private readonly string?[] _values;
    private readonly byte[]? _narrow;
    private readonly ushort[]? _wide;

    private PackedTexts(string?[] values, byte[]? narrow, ushort[]? wide) => (_values, _narrow, _wide) = (values, narrow, wide);

    /// <summary>Whether any row has a text.</summary>
    public bool HasAny => Array.Exists(_values, value => value is not null);

    /// <summary>The text of a row; null where missing.</summary>
    public string? this[int row] => _narrow is not null ? _values[_narrow[row]] : _wide is not null ? _values[_wide[row]] : _values[row];

    /// <summary>Packs the texts.</summary>
    /// <param name="texts">The column, null where missing, the same object for the same text. It is copied.</param>
    public static PackedTexts Of(ReadOnlySpan<string?> texts)
    {
        var most = Math.Min(texts.Length / RowsPerDistinct, ushort.MaxValue);
        var distinct = new List<string?> { null };
        var known = new Dictionary<object, int>(ReferenceEqualityComparer.Instance);
        var places = new ushort[texts.Length];
        var (latest, latestPlace) = ((string?)null, 0);
        for (var row = 0; row < texts.Length; row++)
        {
            if (!ReferenceEquals(texts[row], latest))
            {
                latest = texts[row];
                latestPlace = 0;
                if (latest is not null && !known.TryGetValue(latest, out latestPlace))
                {
                    if (distinct.Count > most)
                        return new PackedTexts(texts.ToArray(), null, null);
                    latestPlace = distinct.Count;
                    distinct.Add(latest);
                    known.Add(latest, latestPlace);
                }
            }

            places[row] = (ushort)latestPlace;
        }

        return distinct.Count <= byte.MaxValue + 1
            ? new PackedTexts([.. distinct], Array.ConvertAll(places, place => (byte)place), null)
            : new PackedTexts([.. distinct], null, places);
    }
}
