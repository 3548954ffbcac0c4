using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>Whether a player was on the way up or down before anything was changed.</summary>
/// <remarks>
/// Least-squares slope of the session means of the earlier phase against 1, 2, 3, … Its error is not taken from the few residuals but from the noise
/// that the change is judged by: Var(session mean) = σ_s² + σ_e² V(k)/k, SE² = Σ w² Var, w = (t − t̄)/Σ(t − t̄)²; t with the degrees of freedom of the
/// change. So three sessions can show a steep trend, which they never can by themselves.
/// </remarks>
public static class BaselineSlope
{
    /// <summary>Method word.</summary>
    public const string Method = "baseline-slope";

    /// <summary>Fewest sessions that show a slope.</summary>
    public const int LeastSessions = 3;

    /// <summary>The slope before a change.</summary>
    /// <param name="data">Swings of both phases.</param>
    /// <param name="change">The change judged on them.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Unit of the values for each session; undefined with fewer than <see cref="LeastSessions"/> sessions before; without error when the noise
    /// is unknown.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Of(ChangeData data, HonestChange change, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var sessions = data.Before;
        if (sessions.Count < LeastSessions)
            return Estimate.NotDefined(Method, $"needs at least {LeastSessions} sessions before the change, got {sessions.Count}");
        var centre = (sessions.Count - 1) / 2.0;
        var spread = Enumerable.Range(0, sessions.Count).Sum(i => (i - centre) * (i - centre));
        var origin = Summary.OfChecked(sessions[0]);
        double slope = 0, variance = 0;
        for (var i = 0; i < sessions.Count; i++)
        {
            var weight = (i - centre) / spread;
            slope += weight * Summary.OfChecked(sessions[i]).MeanMinus(origin);
            variance += weight * weight * VarianceOfMean(sessions[i].Length, change);
        }

        if (change.Estimate.DegreesOfFreedom is not { } df || !(variance > 0))
            return Estimate.Of(Method, slope);
        var se = Math.Sqrt(variance);
        return Estimate.Of(Method, slope, se, Limits.StudentT(slope, se, df, confidence), StudentT.TwoSided(slope / se, df), df);
    }

    private static double VarianceOfMean(int swings, HonestChange change) =>
        change is { SessionStandardDeviation: { } session, SwingStandardDeviation: { } swing }
            ? (session * session) + (swing * swing * change.Dependence.Inflation(swings) / swings)
            : double.NaN;
}
