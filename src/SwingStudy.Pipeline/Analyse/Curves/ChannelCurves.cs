using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>All curves of one channel of one player, laid on one axis, in order of time.</summary>
internal sealed class ChannelCurves
{
    /// <summary>Columns of <c>swing_curves</c> that are needed.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["swing_id", "channel", "unit", "sample_rate_hz", "t0_s", "values", "method"];

    private readonly List<LaidCurve> _curves = [];
    private readonly Dictionary<string, int> _lost = new(StringComparer.Ordinal);

    private ChannelCurves(CurveAxis? axis, string? unit) => (Axis, Unit) = (axis, unit);

    /// <summary>The axis; null where there is none on which most curves lie.</summary>
    public CurveAxis? Axis { get; }

    /// <summary>UCUM unit of the curves.</summary>
    public string? Unit { get; }

    /// <summary>Lays the curves of a channel on their axis.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="swings">Swings that count, in order of time.</param>
    /// <param name="curves">Rows of <c>swing_curves</c>.</param>
    /// <param name="events">Events of each swing.</param>
    public static ChannelCurves Of(string channel, RowSet swings, RowSet curves, IReadOnlyDictionary<string, SwingMoments> events)
    {
        var found = Read(channel, swings, curves, events);
        var (axis, points) = CurveAxis.Lay(found);
        var laid = new ChannelCurves(axis, found.Count > 0 ? found[0].Unit : null);
        foreach (var (curve, own) in found.Zip(points))
        {
            if (own is not null)
                laid._curves.Add(new LaidCurve(curve.Session, curve.Phase, own));
            else
                laid._lost[curve.Phase] = laid._lost.GetValueOrDefault(curve.Phase) + 1;
        }

        return laid;
    }

    /// <summary>The curves of a phase, session by session.</summary>
    public IReadOnlyList<IReadOnlyList<double[]>> Sessions(string phase) =>
        [.. _curves.Where(curve => curve.Phase == phase).GroupBy(curve => curve.Session).Select(session => session.Select(curve => curve.Points).ToList())];

    /// <summary>Counted swings of a phase whose curve could not be used.</summary>
    public int Lost(string phase) => _lost.GetValueOrDefault(phase);

    private static List<SwingCurve> Read(string channel, RowSet swings, RowSet curves, IReadOnlyDictionary<string, SwingMoments> events)
    {
        var (ids, channels, units) = (curves.Texts("swing_id"), curves.Texts("channel"), curves.Texts("unit"));
        var (rates, starts, methods) = (curves.Numbers("sample_rate_hz"), curves.Numbers("t0_s"), curves.Texts("method"));
        var values = ((NumberListColumn)curves["values"]).Values;
        // A swing that two devices recorded has two curves of a channel: the first by its method, then by its beginning, stands for it.
        var rowOf = Enumerable.Range(0, curves.Count).Where(row => channels[row] == channel && ids[row] is not null && values[row] is { Length: > 0 })
            .Where(row => rates[row] > 0 && double.IsFinite(starts[row]))
            .OrderBy(row => methods[row], StringComparer.Ordinal).ThenBy(row => starts[row]).ThenBy(row => rates[row])
            .GroupBy(row => ids[row]!).ToDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal);
        var (swingIds, sessions, phases) = (swings.Texts("swing_id"), swings.Texts("session"), swings.Texts("phase"));
        var found = new List<SwingCurve>();
        for (var i = 0; i < swings.Count; i++)
        {
            if (rowOf.TryGetValue(swingIds[i]!, out var row))
                found.Add(new SwingCurve(
                    swingIds[i]!, sessions[i]!, phases[i]!, units[row], rates[row], starts[row], values[row]!, events.GetValueOrDefault(swingIds[i]!, SwingMoments.None)));
        }

        return found;
    }

    private sealed record LaidCurve(string Session, string Phase, double[] Points);
}
