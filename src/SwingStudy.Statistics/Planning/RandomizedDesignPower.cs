using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Planning;

/// <summary>Power of designs that are judged by their randomization test: withdrawal, alternating, multiple baseline.</summary>
/// <remarks>
/// One point is one session mean. Each simulated study draws its assignment from the scheme, adds the change where the intervention acts, and is judged
/// by the exact randomization test of exactly that scheme. Several players of a withdrawal or alternating study are joined by Edgington's additive
/// method. Source: Ferron and Ware (1995), Journal of Experimental Education 63:167–178 (power of randomization tests by simulation).
/// </remarks>
public static class RandomizedDesignPower
{
    /// <summary>Method word of <see cref="ByScheme"/>.</summary>
    public const string SchemeMethod = "power-randomized-scheme";

    /// <summary>Method word of <see cref="MultipleBaseline"/>.</summary>
    public const string MultipleBaselineMethod = "power-multiple-baseline";

    /// <summary>Withdrawal (phase changes) or alternating design: every player draws an assignment of the same scheme.</summary>
    /// <param name="noise">The noise of the outcome.</param>
    /// <param name="scheme">The admissible assignments of a player's sessions, at most 20,000.</param>
    /// <param name="players">Number of players.</param>
    /// <param name="swings">Swings of a session.</param>
    /// <param name="change">True mean change while the intervention acts, in the outcome's unit; it acts at once and ends at once.</param>
    /// <param name="chance">The stream of the simulation; it is split, not drawn from.</param>
    /// <param name="replications">Simulated studies, at least 2.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <exception cref="ArgumentException">A number is out of range or the scheme is too large.</exception>
    public static PlannedPower ByScheme(
        NoiseModel noise, AssignmentScheme scheme, int players, int swings, double change, Xoshiro256 chance,
        int replications = 1000, double alpha = 0.05, int threads = 1)
    {
        noise.Validate();
        Finite.Require([change], nameof(change));
        Finite.RequireConfidence(1 - alpha);
        PowerClosedForm.RequireAtLeast(players, 1, nameof(players));
        if (scheme.Count > 20_000)
            throw new ArgumentException($"The scheme has {scheme.Count} assignments; simulated studies go through at most 20,000 each.", nameof(scheme));
        var smallest = Enumerable.Repeat(1 / scheme.Count, players).ToArray();
        return StudySimulation.Run(SchemeMethod, replications, chance, threads, CombinedP.Additive(smallest), stream =>
        {
            var means = new SessionMeans(noise, swings, new NormalStream(stream));
            var series = new double[scheme.Length];
            var assignment = new bool[scheme.Length];
            var p = new double[players];
            return () =>
            {
                var estimate = 0.0;
                for (var player = 0; player < players; player++)
                {
                    scheme.Draw(stream, assignment);
                    means.Draw(series);
                    var own = means.Change(change);
                    for (var i = 0; i < series.Length; i++)
                        series[i] += assignment[i] ? own : 0;
                    var test = RandomizationTest.Of(series, assignment, scheme);
                    p[player] = test.PTwoSided!.Value;
                    estimate += test.Observed!.Value / players;
                }

                return new StudyOutcome(CombinedP.Additive(p) <= alpha, estimate, double.NaN);
            };
        });
    }

    /// <summary>Multiple baseline: each player's start is drawn from a window of its own.</summary>
    /// <param name="noise">The noise of the outcome.</param>
    /// <param name="sessions">Sessions of each player.</param>
    /// <param name="windows">Admissible 0-based starts of the intervention, one set a player.</param>
    /// <param name="orderDrawn">Whether it is drawn which player has which window.</param>
    /// <param name="swings">Swings of a session.</param>
    /// <param name="change">True mean change from the start on, in the outcome's unit.</param>
    /// <param name="chance">The stream of the simulation; it is split, not drawn from.</param>
    /// <param name="replications">Simulated studies, at least 2.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <exception cref="ArgumentException">A number is out of range or a window is empty.</exception>
    public static PlannedPower MultipleBaseline(
        NoiseModel noise, int sessions, IReadOnlyList<int[]> windows, bool orderDrawn, int swings, double change, Xoshiro256 chance,
        int replications = 1000, double alpha = 0.05, int threads = 1)
    {
        noise.Validate();
        Finite.Require([change], nameof(change));
        Finite.RequireConfidence(1 - alpha);
        if (windows.Count == 0 || windows.Any(window => window.Length == 0))
            throw new ArgumentException("Each player needs a window with a start.", nameof(windows));
        var assignments = windows.Aggregate(orderDrawn ? Choices.Factorial(windows.Count) : 1, (count, window) => count * window.Length);
        var smallest = 1 / Math.Min(assignments, assignments <= RandomizationTest.LargestExact ? assignments : 1000);
        return StudySimulation.Run(MultipleBaselineMethod, replications, chance, threads, smallest, stream =>
        {
            var means = new SessionMeans(noise, swings, new NormalStream(stream));
            double[][] series = [.. windows.Select(_ => new double[sessions])];
            var tiers = Enumerable.Range(0, windows.Count).ToArray();
            var starts = new int[windows.Count];
            return () =>
            {
                if (orderDrawn)
                    Shuffle.All(tiers.AsSpan(), stream);
                for (var player = 0; player < starts.Length; player++)
                {
                    var window = windows[tiers[player]];
                    starts[player] = window[stream.NextIndex(window.Length)];
                    means.Draw(series[player]);
                    var own = means.Change(change);
                    foreach (ref var value in series[player].AsSpan(Math.Min(sessions, starts[player])))
                        value += own;
                }

                var test = MultipleBaselineTest.Of(series, windows, starts, orderDrawn, new Xoshiro256(stream.NextBits()), resamples: 999);
                return new StudyOutcome(test.PTwoSided <= alpha, test.Observed!.Value, double.NaN);
            };
        });
    }
}
