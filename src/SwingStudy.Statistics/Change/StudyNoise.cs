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

    /// <summary>Checks the numbers.</summary>
    /// <exception cref="ArgumentException">A standard deviation is negative or not finite, or comes without degrees of freedom.</exception>
    public void Validate()
    {
        Check(SessionStandardDeviation, SessionDegreesOfFreedom, nameof(SessionStandardDeviation));
        Check(SwingStandardDeviation, SwingDegreesOfFreedom, nameof(SwingStandardDeviation));
    }

    private static void Check(double? deviation, double df, string name)
    {
        if (deviation is { } s && !(s >= 0 && double.IsFinite(s) && df > 0))
            throw new ArgumentException($"{name} needs a value of 0 or more with positive degrees of freedom; got {s} with {df}.", name);
    }
}
