using System.Globalization;
using SwingStudy.Pipeline.Analyse.Trends;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>The player was on the way before anything was changed, or may have been: going on like that would explain the change.</summary>
internal static class TrendBefore
{
    /// <summary>p of the baseline trend, by the noise of the change or by ranks, below which it is taken for one: lenient, because few sessions show trends
    /// badly, and a steep trend itself swells the noise.</summary>
    private const double Level = 0.1;

    /// <summary>Share of the change that a visible trend would have to explain.</summary>
    private const double Much = 0.5;

    private const int MostSessions = 40;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (player.Estimate is not { } change || change == 0)
            yield break;
        if (Visible(player, change) is { } visible)
            yield return visible;
        if (Possible(player, change) is { } possible)
            yield return possible;
    }

    /// <summary>A trend of the earlier phase that shows.</summary>
    private static Caveat? Visible(ComparedPlayer player, double change)
    {
        if (player.Term(TrendTerm.BaselineTrend) is not { } trend || !(trend.P < Level || player.Term(TrendTerm.BaselineTrendMedian)?.P < Level))
            return null;
        var expected = trend.Value * Distance(player);
        var slope = player.Quantity.Text(trend.Value, magnitude: true);
        var direction = trend.Value > 0 ? "rose" : "fell";
        if (Math.Sign(expected) != Math.Sign(change))
            return new Caveat("baseline-turned", $"it {direction} by about {slope} from session to session in {player.From.Plain}, and the change goes the other way", false);
        return Math.Abs(expected) < Much * Math.Abs(change) ? null : new Caveat("baseline-trend",
            $"it {direction} by about {slope} from session to session in {player.From.Plain} already; going on like that would give {player.Quantity.Text(expected, magnitude: true)} of the change{Draw(player)}",
            !ChanceSpeaksAgainst(player), $"go on with {player.From.Plain} until it is level, or take the cue away again and see whether the change goes");
    }

    /// <summary>A steady trend through all phases, whether it shows or not, that cannot be told from the change: what it leaves of the change may be nothing.</summary>
    private static Caveat? Possible(ComparedPlayer player, double change)
    {
        var left = player.Term(TrendTerm.ChangeBeyondTrend);
        if (left is not null && Math.Sign(left.Value) == Math.Sign(change) && !(left.P > 2 * (1 - player.Settings.Confidence)))
            return null;
        var mend = Mend(player);
        if (left is null || player.Term(TrendTerm.WithinPhases) is not { } trend)
        {
            return new Caveat("steady-trend", "one session of each phase cannot show whether it went that way steadily from session to session, cue or no cue", !ChanceSpeaksAgainst(player), mend);
        }

        var limits = left.HasInterval ? $" ({100 * player.Settings.Confidence:0.#} % confidence interval {player.Quantity.Range(left.Low, left.High)})" : "";
        return new Caveat("steady-trend", string.Create(CultureInfo.InvariantCulture,
            $"a steady trend from session to session, cue or no cue, could explain it: the sessions within phases {(trend.Value >= 0 ? "rise" : "fall")} by {player.Quantity.Text(trend.Value, magnitude: true)} each, and going on like that for the {Distance(player):0.#} sessions between the phases leaves {player.Quantity.Text(left.Value)} of the change{limits}{Draw(player)}"),
            !ChanceSpeaksAgainst(player), mend);
    }

    private static string Mend(ComparedPlayer player)
    {
        var swings = player.From.MinimumSwings;
        var sessions = TrendFreeChange.SessionsToTell(player.Change, swings, player.Settings.Confidence, MostSessions);
        var more = sessions is { } count && count > Math.Min(player.Change.SessionsBefore, player.Change.SessionsAfter)
            ? string.Create(CultureInfo.InvariantCulture, $"about {count} sessions of each phase tell a change of this size from a steady trend; or ")
            : "";
        return $"{more}take the cue away again and see whether the change goes, or let chance decide when the cue comes";
    }

    /// <summary>Sessions from the middle of the earlier to the middle of the later phase.</summary>
    private static double Distance(ComparedPlayer player) => TrendFreeChange.Of(PhaseValues.Series(player.Values, player.Contrast), player.Change).Distance;

    /// <summary>A draw by lot guards against any trend, once its own test speaks.</summary>
    private static bool ChanceSpeaksAgainst(ComparedPlayer player) => UnconvincedDraw.P(player) <= 1 - player.Settings.Confidence;

    private static string Draw(ComparedPlayer player) =>
        ChanceSpeaksAgainst(player) ? "; but chance decided when the cue came, and its test speaks against a trend that chose just this moment" : "";
}
