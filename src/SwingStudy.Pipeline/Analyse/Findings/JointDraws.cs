using SwingStudy.Pipeline.Analyse.Group;
using SwingStudy.Pipeline.Analyse.Randomization;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The randomization test of players that were drawn together, one for each comparison of the intervention with a baseline.</summary>
internal static class JointDraws
{
    /// <summary>The tests of one comparison; none where no players were drawn together or a drawn player has no rows.</summary>
    public static IEnumerable<JointTest> Of(IReadOnlyList<PlayerChange> players, FindingSettings settings)
    {
        var first = players[0];
        if (!first.Contrast.IsWithCue)
            yield break;
        foreach (var draw in settings.Draws.Where(draw => draw.IsJoint))
        {
            var drawn = draw.Players.Select(player => players.FirstOrDefault(change => change.Participant == player.Participant)).ToList();
            if (drawn.Contains(null))
                continue;
            var chance = new Xoshiro256(settings.Seed).Split("randomization-test").Split(first.Outcome.Name);
            var tested = DrawTest.OfPlayers(draw, [.. drawn.Select(change => ConditionSeries.Of(change!.Compared.Values, settings.Phases))], chance, settings.Resamples);
            yield return new JointTest(tested.SmallestP.Value, new GroupEffect
            {
                Outcome = first.Outcome.Name,
                Contrast = first.Contrast.Name,
                Measure = GroupEffect.RandomizationTest,
                Estimate = tested.Test,
                Players = drawn.Count,
                Unit = first.Outcome.Unit,
                Planned = first.Basis == Basis.Planned,
            });
        }
    }
}
