namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>One string for each distinct text, found by its characters without making a string first. For one thread.</summary>
internal sealed class TextPool
{
    // Free texts rarely repeat: beyond this many strings the pool would only cost memory.
    private const int MostStrings = 1 << 16;
    private readonly HashSet<string> _strings = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _bySpan;
    private string _latest = "";

    public TextPool() => _bySpan = _strings.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The string of these characters.</summary>
    public string Get(ReadOnlySpan<char> text)
    {
        // Neighbouring rows mostly say the same: the player, the club, the device.
        if (text.SequenceEqual(_latest))
            return _latest;
        if (!_bySpan.TryGetValue(text, out var known))
        {
            known = text.ToString();
            if (_strings.Count < MostStrings)
                _strings.Add(known);
        }

        _latest = known;
        return known;
    }
}
