using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Link;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What each source read at each swing, as read or as computed from its curves.</summary>
internal sealed class SourceReadings
{
    private const int None = -1;
    private readonly Dictionary<string, int> _swings;
    private readonly Dictionary<string, int[]> _rowsOf = new(StringComparer.Ordinal);
    private readonly RowSet _captures;
    private readonly RowSet _computed;
    private readonly ILookup<string, int> _computedOf;

    /// <param name="captures">Captures that hold values.</param>
    /// <param name="links">Which capture belongs to which swing. A swing's first capture of a source speaks for it; one found by its window of time alone does not.</param>
    /// <param name="computed">What was computed from curves, by swing, variable and source.</param>
    public SourceReadings(RowSet captures, RowSet links, RowSet computed)
    {
        (_captures, _computed) = (captures, computed);
        var (linked, measured) = (links.Texts("swing_id"), computed.Texts("swing_id"));
        _swings = linked.Concat(measured).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Index()
            .ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        Participants = new string[_swings.Count];
        AddPlayers(linked, links.Texts("participant"));
        AddPlayers(measured, computed.Texts("participant"));
        AddRows(captures, links);
        var (variables, sources) = (computed.Texts("variable"), computed.Texts("source"));
        _computedOf = Enumerable.Range(0, computed.Count).Where(row => variables[row] is not null && sources[row] is not null)
            .ToLookup(row => variables[row]!, StringComparer.Ordinal);
    }

    /// <summary>The player of each swing, swings in order of their names.</summary>
    public string[] Participants { get; }

    /// <summary>Values of a variable by source, one for each swing; NaN where the source has none. What was read goes before what was computed.</summary>
    public Dictionary<string, double[]> Of(string variable)
    {
        var read = _captures.Numbers(variable);
        var values = _rowsOf.ToDictionary(source => source.Key, source => Array.ConvertAll(source.Value, row => row == None ? double.NaN : read[row]), StringComparer.Ordinal);
        var (swings, sources, numbers) = (_computed.Texts("swing_id"), _computed.Texts("source"), _computed.Numbers("value"));
        foreach (var row in _computedOf[variable])
        {
            if (!values.TryGetValue(sources[row]!, out var own))
            {
                values[sources[row]!] = own = new double[_swings.Count];
                Array.Fill(own, double.NaN);
            }

            ref var value = ref own[_swings[swings[row]!]];
            if (double.IsNaN(value))
                value = numbers[row];
        }

        return values;
    }

    private void AddPlayers(string?[] swings, string?[] participants)
    {
        for (var i = 0; i < swings.Length; i++)
        {
            if (swings[i] is { } swing)
                Participants[_swings[swing]] ??= participants[i] ?? "";
        }
    }

    private void AddRows(RowSet captures, RowSet links)
    {
        var (ids, sources) = (captures.Texts("capture_id"), captures.Texts("source"));
        var rowOf = Enumerable.Range(0, captures.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var (linked, swings, methods) = (links.Texts("capture_id"), links.Texts("swing_id"), links.Texts("method"));
        for (var i = 0; i < links.Count; i++)
        {
            if (swings[i] is not { } swing || methods[i] == LinkMethods.Window || !rowOf.TryGetValue(linked[i]!, out var row))
                continue;
            if (!_rowsOf.TryGetValue(sources[row]!, out var own))
            {
                _rowsOf[sources[row]!] = own = new int[_swings.Count];
                Array.Fill(own, None);
            }

            ref var first = ref own[_swings[swing]];
            if (first == None)
                first = row;
        }
    }
}
