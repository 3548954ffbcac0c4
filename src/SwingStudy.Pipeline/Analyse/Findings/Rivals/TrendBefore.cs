using SwingStudy.Pipeline.Analyse.Trends;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>The player was on the way before anything was changed, and going on like that would explain much of the change.</summary>
internal static class TrendBefore
{
    /// <summary>p of the baseline trend, by the noise of the change or by ranks, below which it is taken for one: lenient, because few sessions show trends
    /// badly, and a steep trend itself swells the noise.</summary>
    private const double Level = 0.1;

    /// <summary>Share of the change that the trend would have to explain.</summary>
    private const double Much = 0.5;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (player.Estimate is not { } change || player.Term(TrendTerm.BaselineTrend) is not { } trend || !(trend.P < Level || player.Term(TrendTerm.BaselineTrendMedian)?.P < Level))
            yield break;

        // From the middle of the earlier to the middle of the later phase, in sessions.
        var expected = trend.Value * (player.Change.SessionsBefore + player.Change.SessionsAfter) / 2.0;
        var slope = player.Quantity.Text(trend.Value, magnitude: true);
        var direction = trend.Value > 0 ? "rose" : "fell";
        if (Math.Sign(expected) == Math.Sign(change) && Math.Abs(expected) >= Much * Math.Abs(change))
        {
            yield return new Caveat("baseline-trend",
                $"it {direction} by about {slope} from session to session in {player.From.Plain} already; going on like that would give {player.Quantity.Text(expected, magnitude: true)} of the change", true,
                $"go on with {player.From.Plain} until it is level, or take the cue away again and see whether the change goes");
        }
        else if (Math.Sign(expected) != Math.Sign(change))
        {
            yield return new Caveat("baseline-turned", $"it {direction} by about {slope} from session to session in {player.From.Plain}, and the change goes the other way", false);
        }
    }
}
