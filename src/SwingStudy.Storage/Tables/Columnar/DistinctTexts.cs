namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>The distinct texts of a column in order of appearance, and the place of each row's text among them. The same object is known
/// again without comparing its characters.</summary>
internal sealed class DistinctTexts
{
    private const int Sample = 512;
    private readonly Dictionary<object, int> _byObject = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, int> _byText = new(StringComparer.Ordinal);
    private readonly List<string> _distinct = [];

    private DistinctTexts()
    {
    }

    /// <summary>The distinct texts.</summary>
    internal IReadOnlyList<string> Values => _distinct;

    /// <summary>Finds the distinct texts of a column.</summary>
    /// <param name="values">The column; null where missing.</param>
    /// <param name="most">More than these are not worth it.</param>
    /// <param name="places">Filled with the place of each present text.</param>
    /// <param name="present">How many are present.</param>
    /// <returns>Null when there are more than <paramref name="most"/>.</returns>
    internal static DistinctTexts? Of(ReadOnlySpan<string?> values, int most, Span<int> places, out int present)
    {
        var distinct = new DistinctTexts();
        present = 0;
        string? last = null;
        var lastPlace = -1;
        foreach (var value in values)
        {
            if (value is null)
                continue;
            if (!ReferenceEquals(value, last))
            {
                (last, lastPlace) = (value, distinct.Place(value));
                // Texts of which no early one came again, such as identifiers, are not worth looking through to the end.
                if (distinct._distinct.Count > most || (present == Sample && distinct._distinct.Count > Sample * 15 / 16))
                    return null;
            }

            places[present++] = lastPlace;
        }

        return distinct;
    }

    private int Place(string text)
    {
        if (_byObject.TryGetValue(text, out var place))
            return place;
        if (!_byText.TryGetValue(text, out place))
        {
            place = _distinct.Count;
            _distinct.Add(text);
            _byText.Add(text, place);
        }

        _byObject.Add(text, place);
        return place;
    }
}
