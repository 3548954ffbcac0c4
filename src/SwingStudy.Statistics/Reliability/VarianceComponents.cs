using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Reliability;

/// <summary>How much players, sessions and swings each vary, and what follows for means of k swings over m sessions.</summary>
/// <remarks>
/// y = μ + player + session + swing. The error variance of a mean of k swings in each of m sessions is σ_s²/m + σ_e²/(m k): more swings in one
/// day cannot beat σ_s². Source: Searle (1971), Linear Models, ch. 11; generalizability after Shavelson and Webb (1991).
/// </remarks>
/// <param name="Method">How they were estimated.</param>
/// <param name="Player">σ_p², between players, unit squared, 0 or more.</param>
/// <param name="Session">σ_s², between sessions of one player, 0 or more.</param>
/// <param name="Swing">σ_e², between swings of one session, 0 or more.</param>
/// <param name="IsTruncated">Whether an estimate was negative (or ran into zero) and is stated as zero.</param>
public sealed record VarianceComponents(string Method, double Player, double Session, double Swing, bool IsTruncated)
{
    /// <summary>Correlation of single swings of one player in different sessions; null when nothing varies.</summary>
    public double? ReliabilityBetweenSessions => Reliability(1, 1);

    /// <summary>Correlation of single swings of one player in the same session; null when nothing varies.</summary>
    public double? ReliabilityWithinSession => Player + Session + Swing is > 0 and var total ? (Player + Session) / total : null;

    /// <summary>σ_s²/m + σ_e²/(m k).</summary>
    /// <exception cref="ArgumentException">m or k is not positive.</exception>
    public double ErrorVarianceOfMean(double sessions, double swingsPerSession)
    {
        if (!(sessions > 0 && swingsPerSession > 0))
            throw new ArgumentException($"Needs at least one session and one swing; got {sessions} and {swingsPerSession}.");
        return (Session / sessions) + (Swing / (sessions * swingsPerSession));
    }

    /// <summary>σ_p²/(σ_p² + error variance of the mean of k swings over m sessions); null when nothing varies.</summary>
    /// <exception cref="ArgumentException">m or k is not positive.</exception>
    public double? Reliability(double sessions, double swingsPerSession)
    {
        var total = Player + ErrorVarianceOfMean(sessions, swingsPerSession);
        return total > 0 ? Player / total : null;
    }

    /// <summary>Sessions of k swings needed for a reliability: t/(1 − t) · (σ_s² + σ_e²/k)/σ_p², not rounded up; null when players do not differ.</summary>
    /// <exception cref="ArgumentException">The target is not strictly between 0 and 1, or k is not positive.</exception>
    public double? SessionsNeeded(double target, double swingsPerSession)
    {
        Finite.RequireConfidence(target);
        return Player > 0 ? target / (1 - target) * ErrorVarianceOfMean(1, swingsPerSession) / Player : null;
    }

    /// <summary>Swings in each of m sessions needed for a reliability, not rounded up; null when no number is enough or players do not differ.</summary>
    /// <exception cref="ArgumentException">The target is not strictly between 0 and 1, or m is not positive.</exception>
    public double? SwingsNeeded(double target, double sessions)
    {
        Finite.RequireConfidence(target);
        var allowed = (Player * (1 - target) / target * sessions) - Session;
        return Player > 0 && allowed > 0 ? Swing / allowed : null;
    }

    /// <summary>Smallest detectable change between two means, each of k swings over m sessions: z √(2 · error variance), z = 1.96 at 0.95.</summary>
    /// <remarks>Takes the components as known; the honest change uses t with the degrees of freedom behind them.</remarks>
    /// <exception cref="ArgumentException">m or k is not positive, or the confidence is out of range.</exception>
    public double SmallestDetectableChange(double sessions, double swingsPerSession, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        return Normal.Critical(confidence) * Math.Sqrt(2 * ErrorVarianceOfMean(sessions, swingsPerSession));
    }
}
