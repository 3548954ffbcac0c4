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

    /// <summary>Pooled standard deviation σ_s between sessions of one player in one phase (swing noise taken out), unit of the values; null when unknown.</summary>
    public double? SessionStandardDeviation { get; init; }

    /// <summary>Degrees of freedom, positive, of the mean square σ_s² + u σ_e² from which σ_s comes; of σ_s² itself where u = <see cref="SwingShare"/> is 0.</summary>
    public double SessionDegreesOfFreedom { get; init; }

    /// <summary>u ≥ 0: how much of one σ_e² was in the mean square from which σ_s comes, the inverse of the swings in a session; 0 where σ_s is known by itself.</summary>
    public double SwingShare { get; init; }

    /// <summary>Pooled standard deviation σ_e between swings of one session, unit of the values; null when unknown.</summary>
    public double? SwingStandardDeviation { get; init; }

    /// <summary>Degrees of freedom behind <see cref="SwingStandardDeviation"/>, positive.</summary>
    public double SwingDegreesOfFreedom { get; init; }

    /// <summary>Correlation of neighbouring swings over all players, toward which each player's own is shrunk; null when unknown.</summary>
    public double? Lag1 { get; init; }

    /// <summary>σ_s² + u σ_e², what was seen between session means; null when σ_s is unknown.</summary>
    public double? MeanSquare => SessionStandardDeviation is { } session ? (session * session) + SwingPart : null;

    /// <summary>u σ_e², the part of <see cref="MeanSquare"/> that swings explain.</summary>
    public double SwingPart => SwingShare * (SwingStandardDeviation ?? 0) * (SwingStandardDeviation ?? 0);

    /// <summary>
    /// Degrees of freedom of σ_s² itself, a difference of mean squares, after Satterthwaite: σ_s⁴/((σ_s² + u σ_e²)²/ν_s + (u σ_e²)²/ν_e). 0 where σ_s is 0:
    /// its size is then not known at all, only that it is small. Null when σ_s is unknown.
    /// </summary>
    public double? ComponentDegreesOfFreedom
    {
        get
        {
            if (SessionStandardDeviation is not { } session || MeanSquare is not { } mean)
                return null;
            var spread = (mean * mean / SessionDegreesOfFreedom) + (SwingPart > 0 ? SwingPart * SwingPart / SwingDegreesOfFreedom : 0);
            return spread > 0 ? session * session * session * session / spread : 0;
        }
    }

    /// <summary>What sums over players say.</summary>
    /// <remarks>
    /// Nested analysis of variance of swings in sessions in phases of players: σ_e² = MS swings with N − b degrees of freedom, σ_s² = (MS sessions − MS
    /// swings)/k₁, k₁ = (N − Σ n_ij²/n_i)/(b − a), 0 where that is negative; MS sessions has b − a. Source: Searle (1971), Linear Models, ch. 11.
    /// </remarks>
    /// <param name="sums">Sums within phases, so that no change enters.</param>
    /// <returns>What is known; σ_s is unknown where no phase has a second session, σ_e where no session has a second swing.</returns>
    public static StudyNoise Of(NoiseSums sums)
    {
        var (sessionDf, swingDf) = (sums.Sessions - sums.Phases, sums.Swings - sums.Sessions);
        if (swingDf <= 0)
            return Unknown;
        var swing = sums.SwingSquares / swingDf;
        var known = Unknown with { SwingStandardDeviation = Math.Sqrt(swing), SwingDegreesOfFreedom = swingDf };
        if (sessionDf <= 0)
            return known;
        var swings = (sums.Swings - sums.SquareCounts) / sessionDf;
        return known with
        {
            SessionStandardDeviation = Math.Sqrt(Math.Max(0, (sums.SessionSquares / sessionDf) - swing) / swings),
            SessionDegreesOfFreedom = sessionDf,
            SwingShare = 1 / swings,
        };
    }

    /// <summary>Checks the numbers.</summary>
    /// <exception cref="ArgumentException">A standard deviation is negative or not finite, or comes without degrees of freedom; the share of swings is
    /// negative, or not 0 without a swing variance; or the correlation is out of range.</exception>
    public void Validate()
    {
        if (Lag1 is { } rho && !(rho >= -1 && rho <= 1))
            throw new ArgumentException($"{nameof(Lag1)} lies between -1 and 1; got {rho}.", nameof(Lag1));
        Check(SessionStandardDeviation, SessionDegreesOfFreedom, nameof(SessionStandardDeviation));
        Check(SwingStandardDeviation, SwingDegreesOfFreedom, nameof(SwingStandardDeviation));
        if (!(SwingShare >= 0 && double.IsFinite(SwingShare)) || (SwingShare > 0 && SwingStandardDeviation is null))
            throw new ArgumentException($"{nameof(SwingShare)} is 0 or more, and 0 without {nameof(SwingStandardDeviation)}; got {SwingShare}.", nameof(SwingShare));
    }

    private static void Check(double? deviation, double df, string name)
    {
        if (deviation is { } s && !(s >= 0 && double.IsFinite(s) && df > 0))
            throw new ArgumentException($"{name} needs a value of 0 or more with positive degrees of freedom; got {s} with {df}.", name);
    }
}
