using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Which device gave the value of a swing: the preferred source that read the variable, else all that recorded the swing.</summary>
internal sealed class SwingDevices
{
    private readonly Dictionary<string, List<(int Rank, int Row)>> _captures = new(StringComparer.Ordinal);
    private readonly RowSet _rows;

    /// <param name="captures">Captures with source, device and the outcomes' columns.</param>
    /// <param name="links">Which capture belongs to which swing.</param>
    /// <param name="sources">Preferred sources first.</param>
    public SwingDevices(RowSet captures, RowSet links, IReadOnlyList<string> sources)
    {
        _rows = captures;
        var (ids, of) = (captures.Texts("capture_id"), captures.Texts("source"));
        var rank = sources.Index().ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        var rowOf = Enumerable.Range(0, captures.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var (linked, swings) = (links.Texts("capture_id"), links.Texts("swing_id"));
        for (var i = 0; i < links.Count; i++)
        {
            // Sources that give no swings, such as a wearable's stream, do not decide where a value comes from.
            if (swings[i] is not { } swing || !rowOf.TryGetValue(linked[i]!, out var row) || !rank.TryGetValue(of[row] ?? "", out var place))
                continue;
            if (!_captures.TryGetValue(swing, out var own))
                _captures[swing] = own = [];
            own.Add((place, row));
        }
    }

    /// <summary>The device or devices; null when no link says.</summary>
    public string? Of(string swing, string variable)
    {
        if (!_captures.TryGetValue(swing, out var own))
            return null;
        var values = _rows[variable] is NumberColumn numbers ? numbers.Values : null;
        var read = values is null ? [] : own.Where(capture => !double.IsNaN(values[capture.Row])).OrderBy(capture => capture.Rank).Take(1).ToList();
        return string.Join(" and ", (read.Count > 0 ? read : own).Select(capture => Name(capture.Row)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    private string Name(int row) => _rows.Texts("device")[row] ?? _rows.Texts("source")[row] ?? "";
}
