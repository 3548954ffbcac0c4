using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Change;

/// <summary>The noise behind one player's change, as <see cref="HonestChangeRule"/> defines it.</summary>
internal sealed record ChangeNoise
{
    /// <summary>Degrees of freedom between sessions, the player's own and the study's, from which on the study's count.</summary>
    public const int LeastDegrees = 2;

    public required SerialDependence Dependence { get; init; }

    public required CannotTell CannotTell { get; init; }

    public required ChangeLimit Limit { get; init; }

    /// <summary>σ_e²; null when unknown.</summary>
    public double? SwingVariance { get; init; }

    /// <summary>σ_s², 0 or more; null when unknown.</summary>
    public double? SessionVariance { get; init; }

    /// <summary>What swings contribute to SE²; null when unknown.</summary>
    public double? SwingPart { get; init; }

    /// <summary>What sessions contribute to SE²; null when unknown.</summary>
    public double? SessionPart { get; init; }

    /// <summary>SE²; null when it cannot be known.</summary>
    public double? Variance { get; init; }

    public double? DegreesOfFreedom { get; init; }

    public static ChangeNoise Of(ChangeData data, StudyNoise noise)
    {
        var dependence = SerialDependence.Of([.. data.Sessions], noise.Lag1);
        var (swing, swingDf) = SwingNoise(data, noise, dependence);
        var (m1, m2) = (data.Before.Count, data.After.Count);
        var a = (1.0 / m1) + (1.0 / m2);
        var ownDf = m1 + m2 - 2;
        var own = ownDf > 0
            ? (HonestChangeRule.SessionMeans(data.Before).SumOfSquares + HonestChangeRule.SessionMeans(data.After).SumOfSquares) / ownDf
            : (double?)null;

        // Swing part of SE² and of E S² (or, without own degrees of freedom, of a typical session mean), both per unit of σ_e².
        var part = MeanInverse(data.Before, dependence) / m1 + (MeanInverse(data.After, dependence) / m2);
        var inMeans = ownDf > 0
            ? (((m1 - 1) * MeanInverse(data.Before, dependence)) + ((m2 - 1) * MeanInverse(data.After, dependence))) / ownDf
            : part / a;

        // The study's session variance has the swing noise taken out: without a swing variance to add it is of no use.
        // One pair of sessions alone tells too little of days to judge anybody by.
        var pooled = swing is null || ownDf + noise.SessionDegreesOfFreedom < LeastDegrees ? null : noise.MeanSquare;
        var pooledDf = pooled is null ? 0 : noise.SessionDegreesOfFreedom;
        var share = ownDf + pooledDf > 0 ? ownDf / (ownDf + pooledDf) : 0;
        var session = SessionVarianceOf(own, swing, inMeans, pooled - noise.SwingPart, share);
        var known = new ChangeNoise
        {
            Dependence = dependence,
            CannotTell = Reason(m1, m2, isSessionVarianceGiven: pooled is not null || (swing is null && noise.SessionStandardDeviation is not null), swing is not null),
            Limit = session is null ? ChangeLimit.UnknownSessionVariance : a * session > (swing ?? 0) * part ? ChangeLimit.Sessions : ChangeLimit.Swings,
            SwingVariance = swing,
            SessionVariance = session,
            SwingPart = swing * part,
            SessionPart = a * session,
        };
        if (own is null && pooled is null)
            return known;

        // Sessions of unequal length may leave less for swings than the own mean square holds, which shall not make the answer surer.
        var swings = (Math.Max(part, a * inMeans) - (a * share * inMeans)) * (swing ?? 0);
        var (ownTerm, pooledTerm, swingsOfStudy) = (a * share * (own ?? 0), a * (1 - share) * (pooled ?? 0), a * (1 - share) * (pooled is null ? 0 : noise.SwingPart));
        MeanSquareSum sum = data.HasSwingDegrees
            ? new([new(ownTerm, ownDf), new(pooledTerm, pooledDf), new(-swingsOfStudy, noise.SwingDegreesOfFreedom), new(swings, swingDf)])
            : new([new(ownTerm, ownDf), new(pooledTerm, pooledDf), new(swings - swingsOfStudy, swingDf)]);
        return known with { Variance = sum.Value, DegreesOfFreedom = sum.DegreesOfFreedom ?? ownDf + pooledDf };
    }

    /// <summary>Mean over sessions of V(k)/k.</summary>
    private static double MeanInverse(IReadOnlyList<double[]> sessions, SerialDependence dependence) =>
        sessions.Average(s => dependence.Inflation(s.Length) / s.Length);

    /// <summary>σ_e² within sessions; serial dependence hides part of it in the session means: E SS = σ_e² (k − V).</summary>
    private static (double? Variance, double Df) SwingNoise(ChangeData data, StudyNoise noise, SerialDependence dependence)
    {
        double sum = 0, divisor = 0;
        var df = 0;
        foreach (var session in data.Sessions)
        {
            sum += Summary.OfChecked(session).SumOfSquares;
            divisor += session.Length - dependence.Inflation(session.Length);
            df += session.Length - 1;
        }

        return df > 0
            ? (sum / divisor, df)
            : (noise.SwingStandardDeviation * noise.SwingStandardDeviation, noise.SwingStandardDeviation is null ? 0 : noise.SwingDegreesOfFreedom);
    }

    private static double? SessionVarianceOf(double? own, double? swing, double inMeans, double? pooled, double share)
    {
        var ownSession = own is { } s && swing is { } e ? s - (e * inMeans) : own;
        return (ownSession, pooled) switch
        {
            ({ } o, { } p) => Math.Max(0, (share * o) + ((1 - share) * p)),
            ({ } o, null) => Math.Max(0, o),
            (null, { } p) => p,
            _ => null,
        };
    }

    private static CannotTell Reason(int m1, int m2, bool isSessionVarianceGiven, bool isSwingVarianceKnown)
    {
        if (Math.Min(m1, m2) > 1)
            return CannotTell.No;
        if (!isSessionVarianceGiven)
            return CannotTell.OneSessionWithoutSessionVariance;
        return isSwingVarianceKnown ? CannotTell.No : CannotTell.SwingVarianceUnknown;
    }
}
