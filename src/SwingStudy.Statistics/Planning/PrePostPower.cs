using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Planning;

/// <summary>Power and precision of a pre-post study: every player has the same number of sessions before and after.</summary>
/// <remarks>
/// Several players: paired t test of the players' differences of phase means. One player: two-sample t test of session means, which knows that day
/// differs from day. With independent sessions the variance of a player's difference is τ² + 2(session² + swing variance of a session mean)/sessions.
/// </remarks>
public static class PrePostPower
{
    /// <summary>Method word of <see cref="Simulate"/>.</summary>
    public const string Method = "power-pre-post";

    /// <summary>Power of the t test when sessions are independent.</summary>
    /// <param name="noise">The noise of the outcome; its session autocorrelation must be 0.</param>
    /// <param name="size">Players, sessions of each phase and swings of a session.</param>
    /// <param name="change">True mean change, in the outcome's unit.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <returns>The power; null when the design has no degree of freedom or no noise at all.</returns>
    /// <exception cref="ArgumentException">A number is out of range, or sessions are autocorrelated.</exception>
    public static double? ClosedForm(NoiseModel noise, StudySize size, double change, double alpha = 0.05)
    {
        noise.Validate();
        size.Validate();
        if (noise.SessionAutocorrelation != 0)
            throw new ArgumentException("The closed form holds for independent sessions: simulate instead.", nameof(noise));
        var df = size.Players > 1 ? size.Players - 1 : (2 * size.Sessions) - 2;
        var variance = 2 * noise.VarianceOfPhaseMean(size.Sessions, size.Swings);
        if (size.Players > 1)
            variance = ((noise.ChangeBetweenPlayers * noise.ChangeBetweenPlayers) + variance) / size.Players;
        return df < 1 || variance == 0 ? null : PowerClosedForm.Power(change / Math.Sqrt(variance), df, alpha);
    }

    /// <summary>Power and precision by simulated studies.</summary>
    /// <param name="noise">The noise of the outcome.</param>
    /// <param name="size">Players, sessions of each phase and swings of a session.</param>
    /// <param name="change">True mean change, in the outcome's unit.</param>
    /// <param name="chance">The stream of the simulation; it is split, not drawn from.</param>
    /// <param name="replications">Simulated studies, at least 2.</param>
    /// <param name="alpha">Two-sided level; intervals have the level 1 − alpha.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>What to expect; null when the design has no degree of freedom, which is one player with one session a phase.</returns>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static PlannedPower? Simulate(
        NoiseModel noise, StudySize size, double change, Xoshiro256 chance, int replications = 10_000, double alpha = 0.05, int threads = 1)
    {
        noise.Validate();
        size.Validate();
        Finite.Require([change], nameof(change));
        Finite.RequireConfidence(1 - alpha);
        var df = size.Players > 1 ? size.Players - 1 : (2 * size.Sessions) - 2;
        if (df < 1)
            return null;
        var critical = StudentT.Critical(1 - alpha, df);
        return StudySimulation.Run(Method, replications, chance, threads, null, stream =>
        {
            var means = new SessionMeans(noise, size.Swings, new NormalStream(stream));
            var series = new double[2 * size.Sessions];
            var differences = new double[size.Players];
            return () =>
            {
                for (var player = 0; player < size.Players; player++)
                {
                    means.Draw(series);
                    differences[player] = Difference(series) + (size.Players > 1 ? means.Change(change) : change);
                }

                var (estimate, error) = size.Players > 1 ? OfPlayers(differences) : (differences[0], ErrorOfOne(series));
                var significant = error > 0 ? Math.Abs(estimate) >= critical * error : estimate != 0;
                return new StudyOutcome(significant, estimate, critical * error);
            };
        });
    }

    private static double Difference(double[] series)
    {
        var half = series.Length / 2;
        double before = 0, after = 0;
        for (var i = 0; i < half; i++)
        {
            before += series[i];
            after += series[half + i];
        }

        return (after - before) / half;
    }

    private static (double Estimate, double Error) OfPlayers(double[] differences)
    {
        double sum = 0, squares = 0, n = differences.Length;
        foreach (var difference in differences)
            sum += difference;
        foreach (var difference in differences)
            squares += (difference - (sum / n)) * (difference - (sum / n));
        return (sum / n, Math.Sqrt(squares / (n - 1) / n));
    }

    private static double ErrorOfOne(double[] series)
    {
        var half = series.Length / 2;
        var squares = Summary.Of(series.AsSpan(0, half)).SumOfSquares + Summary.Of(series.AsSpan(half)).SumOfSquares;
        return Math.Sqrt(squares / (series.Length - 2) * 2 / half);
    }

    /// <summary>Fewest sessions of each phase with at least the power wanted, by the closed form.</summary>
    /// <param name="noise">The noise of the outcome; its session autocorrelation must be 0.</param>
    /// <param name="players">Number of players.</param>
    /// <param name="swings">Swings of a session.</param>
    /// <param name="change">True mean change, in the outcome's unit.</param>
    /// <param name="power">Power wanted, a share.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <param name="most">Largest number of sessions to consider.</param>
    /// <returns>The number; null when even <paramref name="most"/> sessions do not reach the power.</returns>
    /// <exception cref="ArgumentException">A number is out of range, or sessions are autocorrelated.</exception>
    public static int? SessionsNeeded(
        NoiseModel noise, int players, int swings, double change, double power = 0.8, double alpha = 0.05, int most = 200)
    {
        for (var sessions = 1; sessions <= most; sessions++)
        {
            var size = new StudySize { Players = players, Sessions = sessions, Swings = swings };
            if (ClosedForm(noise, size, change, alpha) >= power)
                return sessions;
        }

        return null;
    }
}
