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

    /// <summary>Packs the texts of some rows.</summary>
    /// <param name="texts">The column, null where missing, the same object for the same text.</param>
    /// <param name="rows">Which of its rows.</param>
    /// <param name="scratch">Serves for packing.</param>
    public static PackedTexts Of(ReadOnlySpan<string?> texts, ReadOnlySpan<int> rows, PackingScratch scratch)
    {
        var most = Math.Min(rows.Length / RowsPerDistinct, ushort.MaxValue);
        var distinct = new List<string?> { null };
        var known = scratch.Known;
        known.Clear();
        var places = scratch.Places(rows.Length);
        var (latest, latestPlace) = ((string?)null, 0);
        for (var i = 0; i < rows.Length; i++)
        {
            var text = texts[rows[i]];
            if (!ReferenceEquals(text, latest))
            {
                latest = text;
                latestPlace = 0;
                if (latest is not null && !known.TryGetValue(latest, out latestPlace))
                {
                    if (distinct.Count > most)
                        return new PackedTexts(Picked(texts, rows), null, null);
                    latestPlace = distinct.Count;
                    distinct.Add(latest);
                    known.Add(latest, latestPlace);
                }
            }

            places[i] = (ushort)latestPlace;
        }

        return distinct.Count <= byte.MaxValue + 1
            ? new PackedTexts([.. distinct], PackingScratch.Narrow(places), null)
            : new PackedTexts([.. distinct], null, places.ToArray());
    }

    private static string?[] Picked(ReadOnlySpan<string?> texts, ReadOnlySpan<int> rows)
    {
        var picked = new string?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            picked[i] = texts[rows[i]];
        return picked;
    }
}
