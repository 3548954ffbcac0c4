using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>What is left of a change when the player is taken to have gone on steadily from session to session, cue or no cue.</summary>
/// <remarks>
/// y = phase + b t + session + swing, t the place of a session in the series. The common slope within phases is b = Σ (t − t̄_p)(ȳ − ȳ_p)/Σ (t − t̄_p)²
/// over all sessions given, ȳ being session means; left is Δ − b D, with Δ the change and D the distance of the compared phases' mean places. The error of
/// Δ is its own; b brings D² Var b − 2 D Cov(Δ, b) with Var(session mean) = σ_s² + σ_e² V(k)/k of the noise by which the change is judged; t with the
/// degrees of freedom of the change. Where the phases alternate, D is near 0 and nearly nothing is taken off; with few sessions b is known badly, and the
/// interval says so. Source: analysis of covariance with the place as covariate, Snedecor and Cochran (1989), Statistical Methods, 8th ed., ch. 18.
/// </remarks>
/// <param name="Slope">b for each session, with error and interval; undefined where no phase has two sessions.</param>
/// <param name="Left">Δ − b D with error, interval and p; undefined where the slope or the change is.</param>
/// <param name="Distance">D in sessions; NaN where a compared phase has no session.</param>
public sealed record TrendFreeChange(Estimate Slope, Estimate Left, double Distance)
{
    /// <summary>Method word of the slope.</summary>
    public const string SlopeMethod = "slope-within-phases";

    /// <summary>Method word of what is left.</summary>
    public const string Method = "trend-free-change";

    /// <summary>Takes the steady trend off.</summary>
    /// <param name="sessions">All sessions of the series, those of other phases too.</param>
    /// <param name="change">The change judged on the sessions of the compared phases.</param>
    /// <param name="confidence">Level of the intervals.</param>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static TrendFreeChange Of(IReadOnlyList<PhaseSession> sessions, HonestChange change, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var origin = sessions.Count > 0 ? Summary.OfChecked(sessions[0].Swings) : default;
        var centres = sessions.GroupBy(session => session.Phase).ToDictionary(phase => phase.Key, phase => phase.Average(session => (double)session.Position));
        var distance = centres.TryGetValue(0, out var before) && centres.TryGetValue(1, out var after) ? after - before : double.NaN;
        double[] off = [.. sessions.Select(session => session.Position - centres[session.Phase])];
        var spread = off.Sum(place => place * place);
        if (!(spread > 0))
            return Undefined("needs two sessions of some phase", distance);

        double slope = 0, variance = 0, shared = 0;
        for (var i = 0; i < sessions.Count; i++)
        {
            var (weight, own) = (off[i] / spread, VarianceOfMean(sessions[i].Swings.Length, change));
            slope += weight * Summary.OfChecked(sessions[i].Swings).MeanMinus(origin);
            variance += weight * weight * own;
            shared += weight * ShareInChange(sessions[i], change) * own;
        }

        if (change.Estimate is not { Value: { } value } || double.IsNaN(distance))
            return Undefined("needs swings in both phases", distance) with { Slope = WithError(SlopeMethod, slope, variance, change, confidence) };
        var left = change.Estimate.StandardError is { } se ? Math.Max(0, (se * se) + (distance * distance * variance) - (2 * distance * shared)) : double.NaN;
        return new TrendFreeChange(WithError(SlopeMethod, slope, variance, change, confidence), WithError(Method, value - (slope * distance), left, change, confidence), distance);
    }

    /// <summary>Sessions of each of two phases that follow each other from which on a change of that size would be told from a steady trend, if it stays.</summary>
    /// <param name="change">The change, whose noise is taken as it stands.</param>
    /// <param name="swings">Swings a session.</param>
    /// <param name="confidence">One-sided level.</param>
    /// <param name="most">Where to stop looking.</param>
    /// <returns>The least number from 2; null when it is above <paramref name="most"/>, or size or noise are unknown.</returns>
    public static int? SessionsToTell(HonestChange change, int swings, double confidence, int most)
    {
        if (change.Estimate.Value is not { } value || value == 0 || VarianceOfMean(Math.Max(1, swings), change) is var variance && !(variance >= 0))
            return null;
        for (var n = 2; n <= most; n++)
        {
            // Two phases of n: the slope's spread is n (n² − 1)/6, and the middles lie n apart.
            var left = (2 * variance / n) + (6 * n * variance / ((n * (double)n) - 1));
            if (StudentT.Critical((2 * confidence) - 1, (2 * n) - 3) * Math.Sqrt(left) < Math.Abs(value))
                return n;
        }

        return null;
    }

    private static TrendFreeChange Undefined(string reason, double distance) =>
        new(Estimate.NotDefined(SlopeMethod, reason), Estimate.NotDefined(Method, reason), distance);

    private static double ShareInChange(PhaseSession session, HonestChange change) => session.Phase switch
    {
        0 => -1.0 / change.SessionsBefore,
        1 => 1.0 / change.SessionsAfter,
        _ => 0,
    };

    private static Estimate WithError(string method, double value, double variance, HonestChange change, double confidence)
    {
        if (change.Estimate.DegreesOfFreedom is not { } df || !(variance > 0))
            return Estimate.Of(method, value);
        var se = Math.Sqrt(variance);
        return Estimate.Of(method, value, se, Limits.StudentT(value, se, df, confidence), StudentT.TwoSided(value / se, df), df);
    }

    private static double VarianceOfMean(int swings, HonestChange change) =>
        change is { SessionStandardDeviation: { } session, SwingStandardDeviation: { } swing }
            ? (session * session) + (swing * swing * change.Dependence.Inflation(swings) / swings)
            : double.NaN;
}
