using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Change;

/// <summary>What the study knows about noise from all players, for those who have too few sessions of their own.</summary>
/// <remarks>
/// The degrees of freedom say how much the pooled value weighs against the player's own sessions. They presume that players share one session
/// variance; where they visibly differ, give fewer.
/// </remarks>
public sealed record StudyNoise
{
    /// <summary>Nothing is known beyond the player's own swings.</summary>
    public static StudyNoise Unknown { get; } = new();

    /// <summary>Pooled standard deviation between sessions of one player in one phase (swing noise taken out), unit of the values; null when unknown.</summary>
    public double? SessionStandardDeviation { get; init; }

    /// <summary>Degrees of freedom behind <see cref="SessionStandardDeviation"/>, positive.</summary>
    public double SessionDegreesOfFreedom { get; init; }

    /// <summary>Pooled standard deviation between swings of one session, used only when no session of the player has a second swing; null when unknown.</summary>
    public double? SwingStandardDeviation { get; init; }

    /// <summary>Degrees of freedom behind <see cref="SwingStandardDeviation"/>, positive.</summary>
    public double SwingDegreesOfFreedom { get; init; }

    /// <summary>Correlation of neighbouring swings over all players, toward which each player's own is shrunk; null when unknown.</summary>
    public double? Lag1 { get; init; }

    /// <summary>Pools the noise of all players, phase by phase, so that no change enters it.</summary>
    /// <remarks>
    /// Session variance: pooled variance of session means within player and phase, less the swing part V σ_e²/k (0 when that is larger); its
    /// degrees of freedom are Σ (sessions − 1). Swing variance: pooled within sessions, corrected for serial dependence.
    /// </remarks>
    /// <param name="phases">One element a player and phase: its sessions, each with its swings in time order, all finite.</param>
    /// <returns>What is known; a part without degrees of freedom stays unknown.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static StudyNoise Pool(IReadOnlyList<IReadOnlyList<double[]>> phases)
    {
        var sessions = phases.SelectMany(p => p).Where(s => s.Length > 0).ToArray();
        foreach (var session in sessions)
            Finite.Require(session, nameof(phases));
        var dependence = SerialDependence.Of(sessions);
        double swingSum = 0, swingDivisor = 0, meanSum = 0, swingPart = 0;
        int swingDf = 0, sessionDf = 0;
        foreach (var session in sessions)
        {
            swingSum += Summary.OfChecked(session).SumOfSquares;
            swingDivisor += session.Length - dependence.Inflation(session.Length);
            swingDf += session.Length - 1;
        }

        foreach (var phase in phases.Select(p => p.Where(s => s.Length > 0).ToArray()).Where(p => p.Length > 1))
        {
            meanSum += HonestChangeRule.SessionMeans(phase).SumOfSquares;
            swingPart += (phase.Length - 1) * phase.Average(s => dependence.Inflation(s.Length) / s.Length);
            sessionDf += phase.Length - 1;
        }

        var swing = swingDf > 0 ? swingSum / swingDivisor : (double?)null;
        return new StudyNoise
        {
            SessionStandardDeviation = sessionDf > 0 && swing is { } e ? Math.Sqrt(Math.Max(0, (meanSum - (e * swingPart)) / sessionDf)) : null,
            SessionDegreesOfFreedom = sessionDf,
            SwingStandardDeviation = swing is { } variance ? Math.Sqrt(variance) : null,
            SwingDegreesOfFreedom = swingDf,
            Lag1 = dependence.Lag1,
        };
    }

    /// <summary>Checks the numbers.</summary>
    /// <exception cref="ArgumentException">A standard deviation is negative or not finite, or comes without degrees of freedom, or the
    /// correlation is out of range.</exception>
    public void Validate()
    {
        if (Lag1 is { } rho && !(rho >= -1 && rho <= 1))
            throw new ArgumentException($"{nameof(Lag1)} lies between -1 and 1; got {rho}.", nameof(Lag1));
        Check(SessionStandardDeviation, SessionDegreesOfFreedom, nameof(SessionStandardDeviation));
        Check(SwingStandardDeviation, SwingDegreesOfFreedom, nameof(SwingStandardDeviation));
    }

    private static void Check(double? deviation, double df, string name)
    {
        if (deviation is { } s && !(s >= 0 && double.IsFinite(s) && df > 0))
            throw new ArgumentException($"{name} needs a value of 0 or more with positive degrees of freedom; got {s} with {df}.", name);
    }
}
