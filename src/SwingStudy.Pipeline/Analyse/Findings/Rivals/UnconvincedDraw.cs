using System.Globalization;
using SwingStudy.Pipeline.Analyse.Trends;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Chance decided when the cue came, its test could have given a small p, and gave one that is far from it.</summary>
internal static class UnconvincedDraw
{
    /// <summary>How many times 1 − confidence p may be before it is called far from small.</summary>
    private const double Far = 2;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (P(player) is { } p && player.Term(TrendTerm.SmallestP) is { } smallest && IsFar(p, smallest.Value, player.Settings.Confidence))
        {
            yield return new Caveat("randomization-test-unconvinced", string.Create(CultureInfo.InvariantCulture,
                $"chance decided when the cue came, and its test, which could have given a p of {smallest.Value:0.###}, gives {Evidence.P(p)}: many other starts would show a difference as large"), true,
                "repeat the study with another draw, or with more sessions after the earliest start: a later start by lot tells more");
        }
    }

    /// <summary>p of the player's own draw; null without one, or where the sessions were not those that were drawn.</summary>
    public static double? P(ComparedPlayer player) =>
        player.Contrast.IsWithCue && player.Settings.DrawOf(player.Player.Participant) is { IsJoint: false } && player.Term(TrendTerm.RandomizationTest) is { P: var p } && !double.IsNaN(p) ? p : null;

    /// <summary>Whether a test that could have been significant gave a p far from it.</summary>
    public static bool IsFar(double p, double smallest, double confidence) => smallest <= 1 - confidence && p > Far * (1 - confidence);
}
