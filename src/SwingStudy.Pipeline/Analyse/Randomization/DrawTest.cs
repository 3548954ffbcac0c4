using System.Globalization;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Results;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Pipeline.Analyse.Randomization;

/// <summary>Tests a change against exactly the set that chance drew from: mean of session means with − without the intervention.</summary>
/// <remarks>Undefined, with its reason, where the sessions were not carried out as drawn: then the draw says nothing about the data.</remarks>
internal static class DrawTest
{
    /// <summary>One player whose assignment was drawn alone.</summary>
    public static DrawTested OfPlayer(DrawnSetting drawn, ConditionSeries series, Xoshiro256 chance, int resamples)
    {
        var done = series.First(drawn.Assignment.Length);
        if (SchemeOf(drawn, done) is not { } scheme)
            return NotAsDrawn(drawn, done);
        return Result(RandomizationTest.Of(done.Means, done.WithIntervention, scheme, chance: chance, resamples: resamples));
    }

    /// <summary>Players that were drawn together, in the order of the draw.</summary>
    public static DrawTested OfPlayers(DrawSetting draw, IReadOnlyList<ConditionSeries> series, Xoshiro256 chance, int resamples)
    {
        // Of an erased player nothing is left, so the set that was drawn from is no longer whole, and no smaller one was ever drawn from.
        if (draw.Players.Count != draw.Windows.Count)
            return DrawTested.Not(RandomizationTest.ExactMethod, "a player of this draw was erased, so that the set that chance drew from is no longer whole");
        if (draw.Players.Where((_, i) => series[i].Means.Length == 0).Select(player => player.Participant).ToList() is { Count: > 0 } without)
        {
            return DrawTested.Not(RandomizationTest.ExactMethod,
                $"the players were drawn together, and {string.Join(", ", without)} {(without.Count == 1 ? "has" : "have")} no session with a value: the draw of all cannot test some");
        }

        var length = Math.Min(draw.Players.Min(player => player.Assignment.Length), series.Min(one => one.Means.Length));
        var done = series.Select(one => one.First(length)).ToList();
        for (var i = 0; i < done.Count; i++)
        {
            if (!IsStart(draw.Players[i], done[i], draw.Windows.SelectMany(window => window)))
                return NotAsDrawn(draw.Players[i], done[i]);
        }

        return Result(MultipleBaselineTest.Of(
            [.. done.Select(one => one.Means)], [.. draw.Windows.Select(window => window.ToArray())], [.. done.Select(one => one.Start)], draw.OrderDrawn, chance, resamples));
    }

    /// <summary>The set that was drawn from, over the sessions that were carried out; null when they are not those of the draw.</summary>
    private static AssignmentScheme? SchemeOf(DrawnSetting drawn, ConditionSeries done)
    {
        if (drawn.Starts.Count > 0)
            return IsStart(drawn, done, drawn.Starts) ? new PhaseStartScheme(done.Means.Length, drawn.Starts) : null;
        if (done.Means.Length != drawn.Assignment.Length || !done.WithIntervention.Select(flag => flag ? '1' : '0').SequenceEqual(drawn.Assignment))
            return null;
        if (drawn is { Phases: { } phases, Least: { } least })
            return new PhaseChangeScheme(drawn.Assignment.Length, phases, least);
        return drawn is { WithIntervention: { } with, LongestRun: { } run } ? new AlternatingScheme(drawn.Assignment.Length - with, with, run) : null;
    }

    /// <summary>Whether the intervention came when it was drawn, once for all, and every start that could have been drawn leaves both conditions a session.</summary>
    private static bool IsStart(DrawnSetting drawn, ConditionSeries done, IEnumerable<int> starts) =>
        done.Start == drawn.Assignment.IndexOf('1', StringComparison.Ordinal) && done.IsOneChange && starts.All(start => start >= 1 && start < done.Means.Length);

    private static DrawTested NotAsDrawn(DrawnSetting drawn, ConditionSeries done) => DrawTested.Not(RandomizationTest.ExactMethod, string.Create(CultureInfo.InvariantCulture,
        $"the sessions of {drawn.Participant} are not those that were drawn (drawn {drawn.Assignment}, carried out {string.Concat(done.WithIntervention.Select(flag => flag ? '1' : '0'))}), so that the draw cannot test them"));

    private static DrawTested Result(RandomizationResult result) => result is not { Observed: { } observed, SmallestPossibleP: { } smallest }
        ? DrawTested.Not(result.Method, result.Undefined ?? "the test gives nothing")
        : DrawTested.Of(
            Estimate.Of(
                string.Create(CultureInfo.InvariantCulture,
                    $"{result.Method}; {(result.IsExact ? "all" : $"{result.Compared} of")} {result.Assignments:0} assignments that could have been drawn; smallest possible p {smallest:0.####}"),
                observed,
                p: result.PTwoSided),
            smallest);
}
