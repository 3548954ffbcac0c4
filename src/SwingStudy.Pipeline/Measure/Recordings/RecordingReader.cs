using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>Gathers curves and device events by capture.</summary>
internal static class RecordingReader
{
    private const string Contact = "impact";
    private const string Trigger = "trigger";

    /// <summary>The recordings of the captures that have curves, by capture.</summary>
    public static IReadOnlyDictionary<string, Recording> Of(RowSet captures, RowSet curves, RowSet events)
    {
        var channels = Channels(curves);
        var marks = Marks(events);
        var (ids, sources, devices, purposes) = (captures.Texts("capture_id"), captures.Texts("source"), captures.Texts("device"), captures.Texts("purpose"));
        var (recorded, struck) = (captures.Instants("recorded_at"), captures.Instants("struck_at"));
        var result = new SortedDictionary<string, Recording>(StringComparer.Ordinal);
        for (var row = 0; row < captures.Count; row++)
        {
            if (!channels.TryGetValue(ids[row]!, out var own))
                continue;
            var first = recorded[row] == InstantColumn.MissingMillis ? double.NaN : recorded[row];
            result[ids[row]!] = new Recording(
                ids[row]!, sources[row]!, devices[row] ?? sources[row]!, purposes[row] ?? "swing", first,
                marks.GetValueOrDefault((ids[row]!, Contact), double.NaN),
                TriggerOf(marks.GetValueOrDefault((ids[row]!, Trigger), double.NaN), own.FirstTimeS, first, struck[row]),
                own.Samples);
        }

        return result;
    }

    /// <summary>Where the trigger lies: as the device marked it, else what the first sample's time tells, else the two instants, which are cut to milliseconds.</summary>
    private static double TriggerOf(double marked, double firstTimeS, double firstMillis, long struckMillis) =>
        !double.IsNaN(marked) ? marked
        : !double.IsNaN(firstTimeS) ? -firstTimeS
        : struckMillis == InstantColumn.MissingMillis ? double.NaN
        : (struckMillis - firstMillis) / 1000;

    private static Dictionary<string, (Dictionary<string, Samples> Samples, double FirstTimeS)> Channels(RowSet curves)
    {
        var (ids, names, rates, firsts) = (curves.Texts("capture_id"), curves.Texts("channel"), curves.Numbers("sample_rate_hz"), curves.Numbers("t0_s"));
        var values = ((NumberListColumn)curves["values"]).Values;
        var result = new Dictionary<string, (Dictionary<string, Samples> Samples, double FirstTimeS)>(StringComparer.Ordinal);
        for (var row = 0; row < curves.Count; row++)
        {
            if (values[row] is not { } samples)
                continue;
            if (!result.TryGetValue(ids[row]!, out var own))
                result[ids[row]!] = own = (new Dictionary<string, Samples>(StringComparer.Ordinal), firsts[row]);
            own.Samples[names[row]!] = new Samples(samples, rates[row]);
        }

        return result;
    }

    private static Dictionary<(string Capture, string Event), double> Marks(RowSet events)
    {
        var (ids, names, times) = (events.Texts("capture_id"), events.Texts("event"), events.Numbers("time_s"));
        var result = new Dictionary<(string, string), double>();
        for (var row = 0; row < events.Count; row++)
            result.TryAdd((ids[row]!, names[row]!), times[row]);
        return result;
    }
}
