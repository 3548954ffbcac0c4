namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>What the plan did not guard against.</summary>
internal static class WeakDesign
{
    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (!player.Settings.IsRandomized)
            yield return new Caveat("not-randomized", "not randomized: nobody drew by lot when the cue came, so that whatever else changed at that time is an explanation too", false);
        if (!player.Settings.IsBlinded)
            yield return new Caveat("not-blinded", "not blinded: players, coaches and whoever measured knew the phase, and hope alone can move a number", false);
    }
}
