using System.Runtime.InteropServices;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Which device gave the value of a swing: the preferred source that read the variable, else all that recorded the swing.</summary>
internal sealed class SwingDevices
{
    private readonly Dictionary<string, List<(int Rank, int ValueRow, string Device)>> _linksOf = new(StringComparer.Ordinal);
    private readonly RowSet _values;

    /// <param name="values">Captures that hold values, with the outcomes' columns.</param>
    /// <param name="links">Which capture of which device belongs to which swing.</param>
    /// <param name="sources">Preferred sources first.</param>
    public SwingDevices(RowSet values, RowSet links, IReadOnlyList<string> sources)
    {
        _values = values;
        var ids = values.Texts("capture_id");
        var rowOf = Enumerable.Range(0, values.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var rank = sources.Index().ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        var (swings, of, captures, devices) = (links.Texts("swing_id"), links.Texts("source"), links.Texts("capture_id"), links.Texts("device"));
        for (var i = 0; i < links.Count; i++)
        {
            // Sources that give no swings, such as a wearable's stream, do not decide where a value comes from.
            if (swings[i] is not { } swing || !rank.TryGetValue(of[i] ?? "", out var place))
                continue;
            ref var own = ref CollectionsMarshal.GetValueRefOrAddDefault(_linksOf, swing, out _);
            (own ??= []).Add((place, rowOf.GetValueOrDefault(captures[i]!, -1), devices[i] ?? ""));
        }
    }

    /// <summary>The device or devices; null when no link says.</summary>
    public string? Of(string swing, string variable)
    {
        if (!_linksOf.TryGetValue(swing, out var own))
            return null;
        if (_values[variable] is NumberColumn numbers && Preferred(own, numbers.Values) is { } device)
            return device;
        return own.Count == 1 ? own[0].Device : string.Join(" and ", own.Select(link => link.Device).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    /// <summary>The device of the first of the preferred sources that read a value.</summary>
    private static string? Preferred(List<(int Rank, int ValueRow, string Device)> links, double[] values)
    {
        var (device, best) = ((string?)null, int.MaxValue);
        foreach (var link in links)
        {
            if (link.ValueRow >= 0 && link.Rank < best && !double.IsNaN(values[link.ValueRow]))
                (device, best) = (link.Device, link.Rank);
        }

        return device;
    }
}
