using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Body weight on the plates changed between phases: drifted plates, other shoes, or another body under every force.</summary>
internal static class DriftedPlates
{
    /// <summary>Change of body weight, as a share, from which plates or footwear are doubted (common practice, no source).</summary>
    private const double Largest = 0.02;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (!player.Settings.HasBodyWeight || player.Outcome.Kind != OutcomeKind.Force
            || player.Player.Mean(FindingSettings.BodyWeight, player.From.Name) is not (> 0 and var before)
            || player.Player.Mean(FindingSettings.BodyWeight, player.To.Name) is not { } after)
        {
            yield break;
        }

        var drift = (after / before) - 1;
        if (Math.Abs(drift) > Largest)
        {
            yield return new Caveat("calibration-drift", string.Create(CultureInfo.InvariantCulture,
                $"body weight on the plates {(drift > 0 ? "rose" : "fell")} by {100 * Math.Abs(drift):0.0} % from {player.From.Plain} to {player.To.Plain}: the plates or the shoes may have changed"), true,
                "weigh the player on the plates before each session, and check the plates with a known load");
        }
    }
}
