using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Planning;

/// <summary>The noise of one outcome: from player to player, from session to session, and from swing to swing, in its unit.</summary>
/// <remarks>
/// y = player + phase + session + swing. Session effects follow a first-order autoregression over sessions, swing errors one over the swings of a
/// session; players differ in level and in how much they change. All standard deviations; autocorrelations in (−1, 1).
/// </remarks>
public sealed record NoiseModel
{
    /// <summary>Standard deviation of the true change over players; 0 when all change alike.</summary>
    public double ChangeBetweenPlayers { get; init; }

    /// <summary>Standard deviation of session effects: how much one day differs from the next.</summary>
    public required double Session { get; init; }

    /// <summary>Standard deviation of single swings within a session.</summary>
    public required double Swing { get; init; }

    /// <summary>Lag-1 autocorrelation of the swings of a session.</summary>
    public double SwingAutocorrelation { get; init; }

    /// <summary>Lag-1 autocorrelation of session effects.</summary>
    public double SessionAutocorrelation { get; init; }

    /// <summary>Variance of a session's mean of <paramref name="swings"/> swings about its session effect.</summary>
    /// <remarks>σ²/k² · (k + 2 Σⱼ (k − j)φʲ), exact for a steady first-order autoregression.</remarks>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public double SwingVarianceOfMean(int swings)
    {
        Validate();
        PowerClosedForm.RequireAtLeast(swings, 1, nameof(swings));
        double sum = swings, power = 1;
        for (var j = 1; j < swings; j++)
        {
            power *= SwingAutocorrelation;
            sum += 2 * (swings - j) * power;
        }

        return Swing * Swing * sum / ((double)swings * swings);
    }

    /// <summary>Variance of a phase mean over sessions with independent session effects: (session² + variance of a session's mean)/sessions.</summary>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public double VarianceOfPhaseMean(int sessions, int swings)
    {
        PowerClosedForm.RequireAtLeast(sessions, 1, nameof(sessions));
        return ((Session * Session) + SwingVarianceOfMean(swings)) / sessions;
    }

    /// <summary>Throws when a standard deviation is negative or not finite, or an autocorrelation is outside (−1, 1).</summary>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public void Validate()
    {
        Finite.Require([ChangeBetweenPlayers, Session, Swing, SwingAutocorrelation, SessionAutocorrelation], nameof(NoiseModel));
        if (ChangeBetweenPlayers < 0 || Session < 0 || Swing < 0)
            throw new ArgumentException("Standard deviations are not negative.", nameof(Session));
        if (Math.Abs(SwingAutocorrelation) >= 1 || Math.Abs(SessionAutocorrelation) >= 1)
            throw new ArgumentException("Autocorrelations lie between −1 and 1.", nameof(SwingAutocorrelation));
    }
}
