using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Kendall-type contrasts of phase B with phase A, with and without the trends inside the phases.</summary>
/// <remarks>
/// S(AB) = improved − worse pairs; S(A), S(B) = Kendall's S of the values against time inside a phase, in the direction of improvement.
/// Tau-U with baseline correction can leave [−1, 1], because S(A) has its own number of pairs: it is not a correlation.
/// Source: Parker, Vannest, Davis and Sauber (2011), Behavior Therapy 42:284–299.
/// </remarks>
public sealed record TauU
{
    /// <summary>Method word of <see cref="AgainstPhase"/>.</summary>
    public const string AgainstPhaseMethod = "tau-ab";

    /// <summary>Method word of <see cref="MinusTrendA"/>.</summary>
    public const string MinusTrendAMethod = "tau-u-ab-minus-trend-a";

    /// <summary>Method word of <see cref="PlusTrendBMinusTrendA"/>.</summary>
    public const string PlusTrendBMinusTrendAMethod = "tau-u-ab-plus-trend-b-minus-trend-a";

    /// <summary>Method word of <see cref="PlusTrendB"/>.</summary>
    public const string PlusTrendBMethod = "tau-u-ab-plus-trend-b";

    /// <summary>Method word of <see cref="TauBAgainstPhase"/>.</summary>
    public const string TauBAgainstPhaseMethod = "kendall-tau-b-phase";

    /// <summary>The pairs across the phases.</summary>
    public required PairCounts Pairs { get; init; }

    /// <summary>Kendall's S inside phase A.</summary>
    public required long TrendA { get; init; }

    /// <summary>Kendall's S inside phase B.</summary>
    public required long TrendB { get; init; }

    /// <summary>Variance of S(AB) without difference and without ties, mn(m + n + 1)/3.</summary>
    public required double NullVariance { get; init; }

    /// <summary>S(AB)/√<see cref="NullVariance"/>; null when a phase is empty.</summary>
    public double? Z { get; init; }

    /// <summary>Tau A v B: S(AB)/(mn).</summary>
    public required Estimate AgainstPhase { get; init; }

    /// <summary>Tau-U with baseline trend taken off: (S(AB) − S(A))/(mn).</summary>
    public required Estimate MinusTrendA { get; init; }

    /// <summary>(S(AB) + S(B) − S(A)) divided by the number of all pairs of the series.</summary>
    public required Estimate PlusTrendBMinusTrendA { get; init; }

    /// <summary>(S(AB) + S(B)) divided by the number of pairs across phases and inside B.</summary>
    public required Estimate PlusTrendB { get; init; }

    /// <summary>Kendall's tau-b of the values against the phase.</summary>
    public required Estimate TauBAgainstPhase { get; init; }

    /// <summary>All contrasts of one pair of phases.</summary>
    /// <param name="phaseA">Values of the earlier phase in order of time, all finite.</param>
    /// <param name="phaseB">Values of the later phase in order of time, same unit, all finite.</param>
    /// <param name="improvement">Which way counts as better.</param>
    /// <returns>The contrasts; undefined when a phase is empty, tau-b also when all values are equal.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static TauU Of(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        var pairs = PairCounts.Of(phaseA, phaseB, improvement);
        var sign = improvement == Improvement.Increase ? 1 : -1;
        var trendA = sign * MannKendallTrend.Of(phaseA).S;
        var trendB = sign * MannKendallTrend.Of(phaseB).S;
        double m = phaseA.Length, n = phaseB.Length, all = m + n;
        var empty = pairs.Total == 0 ? PhaseOverlap.EmptyPhase(phaseA, phaseB) : null;
        var variance = m * n * (all + 1) / 3;
        return new TauU
        {
            Pairs = pairs,
            TrendA = trendA,
            TrendB = trendB,
            NullVariance = variance,
            Z = empty is null ? pairs.S / Math.Sqrt(variance) : null,
            AgainstPhase = Share(AgainstPhaseMethod, pairs.S, m * n, empty),
            MinusTrendA = Share(MinusTrendAMethod, pairs.S - trendA, m * n, empty),
            PlusTrendBMinusTrendA = Share(PlusTrendBMinusTrendAMethod, pairs.S + trendB - trendA, all * (all - 1) / 2, empty),
            PlusTrendB = Share(PlusTrendBMethod, pairs.S + trendB, (m * n) + (n * (n - 1) / 2), empty),
            TauBAgainstPhase = empty is null
                ? TauBAgainst(phaseA, phaseB, sign)
                : Estimate.NotDefined(TauBAgainstPhaseMethod, empty),
        };
    }

    internal static Estimate TauBAgainst(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, int sign)
    {
        double[] values = [.. phaseA, .. phaseB];
        var phases = new double[values.Length];
        phases.AsSpan(phaseA.Length).Fill(sign);
        var trend = MannKendallTrend.Of(phases, values).TauB;
        return trend.IsDefined
            ? trend with { Method = TauBAgainstPhaseMethod, StandardError = StandardErrorOf(trend.Value!.Value, values.Length) }
            : Estimate.NotDefined(TauBAgainstPhaseMethod, "needs values that are not all equal");
    }

    /// <summary>√((2/N)(1 − τ²)), the large-sample bound of Kendall (1970).</summary>
    private static double StandardErrorOf(double tau, int count) => Math.Sqrt(2.0 / count * Math.Max(0, 1 - (tau * tau)));

    private static Estimate Share(string method, double s, double pairs, string? empty) =>
        empty is null ? new Estimate { Method = method, Value = s / pairs } : Estimate.NotDefined(method, empty);
}
