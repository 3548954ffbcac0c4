namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>What the plan did not guard against.</summary>
internal static class WeakDesign
{
    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (player.Settings.DrawOf(player.Player.Participant) is null)
        {
            yield return new Caveat("not-randomized", player.Settings.IsRandomized
                ? "not randomized: the protocol plans a draw, but none is on record for this player"
                : "not randomized: nobody drew by lot when the cue came, so that whatever else changed at that time is an explanation too", false);
        }

        if (!player.Settings.IsBlinded)
            yield return new Caveat("not-blinded", "not blinded: players, coaches and whoever measured knew the phase, and hope alone can move a number", false);
    }
}
