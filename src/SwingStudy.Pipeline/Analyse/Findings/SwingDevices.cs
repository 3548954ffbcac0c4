using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Which device gave the value of a swing: the preferred source that read the variable, else all that recorded the swing.</summary>
internal sealed class SwingDevices
{
    private readonly Dictionary<string, List<(int Rank, int Link)>> _linksOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _rowOf;
    private readonly RowSet _values;
    private readonly string?[] _captures;
    private readonly string?[] _devices;

    /// <param name="values">Captures that hold values, with the outcomes' columns.</param>
    /// <param name="links">Which capture of which device belongs to which swing.</param>
    /// <param name="sources">Preferred sources first.</param>
    public SwingDevices(RowSet values, RowSet links, IReadOnlyList<string> sources)
    {
        (_values, _captures, _devices) = (values, links.Texts("capture_id"), links.Texts("device"));
        var ids = values.Texts("capture_id");
        _rowOf = Enumerable.Range(0, values.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var rank = sources.Index().ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        var (swings, of) = (links.Texts("swing_id"), links.Texts("source"));
        for (var i = 0; i < links.Count; i++)
        {
            // Sources that give no swings, such as a wearable's stream, do not decide where a value comes from.
            if (swings[i] is not { } swing || !rank.TryGetValue(of[i] ?? "", out var place))
                continue;
            if (!_linksOf.TryGetValue(swing, out var own))
                _linksOf[swing] = own = [];
            own.Add((place, i));
        }
    }

    /// <summary>The device or devices; null when no link says.</summary>
    public string? Of(string swing, string variable)
    {
        if (!_linksOf.TryGetValue(swing, out var own))
            return null;
        var values = _values[variable] is NumberColumn numbers ? numbers.Values : null;
        var read = values is null ? [] : own.Where(link => HasValue(values, link.Link)).OrderBy(link => link.Rank).Take(1).ToList();
        return string.Join(" and ", (read.Count > 0 ? read : own).Select(link => _devices[link.Link] ?? "").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    private bool HasValue(double[] values, int link) => _rowOf.TryGetValue(_captures[link]!, out var row) && !double.IsNaN(values[row]);
}
