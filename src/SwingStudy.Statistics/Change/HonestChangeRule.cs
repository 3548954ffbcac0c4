using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>The rule by which a player's change is judged.</summary>
/// <remarks>
/// y = phase + session + swing, session variance σ_s², swing variance σ_e² with first-order serial dependence ρ. The estimate is the mean of
/// session means after − before: one session is one point, however many swings it holds. With m₁, m₂ sessions, A = 1/m₁ + 1/m₂ and
/// w = σ_e² V(k)/k the swing part of a session mean:
/// <list type="bullet">
/// <item>the player's own sessions give S², the pooled variance of session means within phases, ν = m₁ + m₂ − 2, with E S² = σ_s² + w;</item>
/// <item>the study gives M = σ_s² + u σ̄_e², the mean square of session means of its other players, with ν_s degrees of freedom, and σ̄_e² to take
/// off; both are weighted by their degrees of freedom, f = ν/(ν + ν_s);</item>
/// <item>SE² = A f S² + A (1 − f) M − A (1 − f) u σ̄_e² + (swing part of both phases − A f w). With own sessions of equal length alone this is the t test
/// on session means, exact under any serial dependence;</item>
/// <item>each of the four mean squares keeps its own degrees of freedom, so that days which are hardly known do not make swings hardly known: ν of the sum
/// after Satterthwaite, and where that is below 1, nothing is taken off.</item>
/// </list>
/// Swings never count as independent evidence of a change between days: with one session in a phase and no σ_s² from the study the result
/// says 'cannot tell'; a single pair of sessions does not count as knowing it. Sources: Searle (1971), Linear Models, ch. 11; Satterthwaite (1946), Biometrics Bulletin 2:110–114.
/// </remarks>
public static class HonestChangeRule
{
    /// <summary>Judges a change.</summary>
    /// <param name="data">One player's swings in two phases.</param>
    /// <param name="noise">What the study knows about noise.</param>
    /// <param name="smallestWorthwhileChange">Unit of the values, 0 or more.</param>
    /// <param name="confidence">Level of the interval and of the smallest detectable change.</param>
    /// <returns>The change with all that a verdict rests on.</returns>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static HonestChange Judge(ChangeData data, StudyNoise noise, double smallestWorthwhileChange = 0, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        noise.Validate();
        if (!(smallestWorthwhileChange >= 0 && smallestWorthwhileChange <= Finite.Largest))
            throw new ArgumentException($"The smallest worthwhile change is 0 or more; got {smallestWorthwhileChange}.", nameof(smallestWorthwhileChange));
        var facts = Describe(data, smallestWorthwhileChange);
        if (data.Before.Count == 0 || data.After.Count == 0)
            return facts;
        var parts = ChangeNoise.Of(data, noise);
        var estimate = Estimate.Of(HonestChange.Method, SessionMeans(data.After).MeanMinus(SessionMeans(data.Before)));
        facts = facts with
        {
            Estimate = estimate,
            Dependence = parts.Dependence,
            SwingStandardDeviation = Root(parts.SwingVariance),
            SessionStandardDeviation = Root(parts.SessionVariance),
            SwingStandardError = Root(parts.SwingPart),
            SessionStandardError = Root(parts.SessionPart),
            LimitedBy = parts.Limit,
            CannotTell = parts.CannotTell,
        };
        return parts.Variance is { } variance && parts.DegreesOfFreedom is { } df && estimate.Value is { } change
            ? WithUncertainty(facts, change, Math.Sqrt(variance), df, confidence)
            : facts;
    }

    /// <summary>Summary of the session means of one phase, measured from one origin so that a large offset costs no digits.</summary>
    internal static Summary SessionMeans(IReadOnlyList<double[]> sessions)
    {
        var summaries = sessions.Select(s => Summary.OfChecked(s)).ToArray();
        var origin = summaries[0].Origin;
        var means = Summary.OfChecked(summaries.Select(s => s.Origin - origin + s.MeanAboveOrigin).ToArray());
        return means with { Origin = origin, MeanAboveOrigin = means.Origin + means.MeanAboveOrigin };
    }

    private static HonestChange Describe(ChangeData data, double worthwhile) => new()
    {
        Estimate = Estimate.NotDefined(HonestChange.Method, "needs swings in both phases"),
        SessionsBefore = data.Before.Count,
        SessionsAfter = data.After.Count,
        SwingsBefore = data.Before.Sum(s => s.Length),
        SwingsAfter = data.After.Sum(s => s.Length),
        SharedSessions = data.SharedSessions,
        Dependence = SerialDependence.None,
        SmallestWorthwhileChange = worthwhile,
        CannotTell = CannotTell.PhaseWithoutSwings,
    };

    private static HonestChange WithUncertainty(HonestChange facts, double change, double se, double df, double confidence)
    {
        var detectable = StudentT.Critical(confidence, df) * se;
        var worthwhile = facts.SmallestWorthwhileChange;
        return facts with
        {
            Estimate = Estimate.Of(
                HonestChange.Method, change, se, new Interval(change - detectable, change + detectable, confidence), P(change, se, df), df),
            SmallestDetectableChange = detectable,
            ProbabilityAboveWorthwhile = se > 0 ? StudentT.UpperTail((worthwhile - change) / se, df) : change > worthwhile ? 1 : 0,
            ProbabilityBelowWorthwhile = se > 0 ? StudentT.UpperTail((worthwhile + change) / se, df) : -change > worthwhile ? 1 : 0,
        };
    }

    private static double? P(double change, double se, double df) => se > 0 ? StudentT.TwoSided(change / se, df) : change == 0 ? 1 : null;

    private static double? Root(double? variance) => variance is { } v ? Math.Sqrt(v) : null;
}
