using SwingStudy.Pipeline.Link.Clocks;
using SwingStudy.Statistics.Group;

namespace SwingStudy.Pipeline.Link;

/// <summary>How clocks drifted against each other in the stays of a day.</summary>
/// <remarks>
/// A clock may be set anew for each stay; how fast it runs is a property of its quartz. A stay's own drift, from a few swings within minutes, is uncertain by several
/// parts in a million, which moves the ends of the stay by milliseconds; the other stays of the day tell what to expect. How far stays differ, τ, comes from
/// the drifts themselves: two devices of one name that run differently show a large τ, and then little is expected. The estimator of τ is
/// <see cref="HeterogeneityEstimator.DerSimonianLaird"/>.
/// </remarks>
internal sealed class DayDrifts
{
    /// <summary>A quartz changes its rate with temperature by about this much within a day (common practice, no source).</summary>
    private const double LeastScatter = 1e-6;

    private readonly List<Dictionary<Pair, IReadOnlyList<ClockDrift>>> _stays;

    private DayDrifts(List<Dictionary<Pair, IReadOnlyList<ClockDrift>>> stays) => _stays = stays;

    /// <summary>Gathers the drifts of a day.</summary>
    /// <param name="stays">Its stays, each linked by itself.</param>
    public static DayDrifts Of(IReadOnlyList<StayLinks> stays) =>
        new([.. stays.Select(stay => stay.Drifts().ToDictionary(own => Pair.Of(own.Device, own.Reference), own => own.Drifts))]);

    /// <summary>Whether other stays tell what to expect of a clock of a stay.</summary>
    public bool Tell(int stay) => _stays[stay].Keys.Any(pair => Others(stay, pair).Count > 0);

    /// <summary>What to expect of a device's clock in a stay, from the others; null when they tell nothing.</summary>
    public ClockDrift? Expected(int stay, DeviceRecords device, DeviceRecords reference)
    {
        var pair = Pair.Of(device, reference);
        var others = Others(stay, pair);
        if (others.Count == 0)
            return null;
        var between = Math.Max(LeastScatter * LeastScatter, Between([.. others, .. _stays[stay].GetValueOrDefault(pair, [])]));
        var (sum, weighted) = (0.0, 0.0);
        foreach (var own in others)
        {
            var weight = 1 / ((own.Scatter * own.Scatter) + between);
            sum += weight;
            weighted += weight * own.Drift;
        }

        return new ClockDrift(weighted / sum, Math.Sqrt((1 / sum) + between));
    }

    private List<ClockDrift> Others(int stay, Pair pair) => [.. _stays.Where((_, i) => i != stay).SelectMany(own => own.GetValueOrDefault(pair, []))];

    /// <summary>Variance of true drifts between stays.</summary>
    private static double Between(IReadOnlyList<ClockDrift> drifts) => MetaAnalysis.Of(
        [.. drifts.Select(own => own.Drift)], [.. drifts.Select(own => own.Scatter * own.Scatter)], HeterogeneityEstimator.DerSimonianLaird)?.TauSquared.Value ?? 0;

    /// <summary>A device and the one against which its clock is told.</summary>
    private readonly record struct Pair(string Source, string Device, string ReferenceSource, string ReferenceDevice)
    {
        public static Pair Of(DeviceRecords device, DeviceRecords reference) => new(device.Source, device.Device, reference.Source, reference.Device);
    }
}
