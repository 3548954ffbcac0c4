namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Another device measured the outcome in the later phase.</summary>
internal static class ChangedSensor
{
    /// <summary>Difference of the devices' shares from which the device changed with the phase.</summary>
    private const double Changed = 0.5;

    /// <summary>Difference from which it is worth a word.</summary>
    private const double Noticeable = 0.1;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        var before = player.Player.Devices(player.In(player.From), player.Outcome.Name);
        var after = player.Player.Devices(player.In(player.To), player.Outcome.Name);
        var moved = before.Count == 0 || after.Count == 0 ? 0 : ChangedConditions.Distance(before, after);
        if (moved <= Noticeable)
            yield break;
        var words = $"{ChangedConditions.Text(before)} in {player.From.Plain}, {ChangedConditions.Text(after)} in {player.To.Plain}";
        yield return moved >= Changed
            ? new Caveat("sensor-changed", $"another device measured it in the later phase ({words}); two devices may differ by as much", true,
                "measure both phases with the same device, or let both devices record the same swings for the agreement table")
            : new Caveat("sensor-mixed", $"the devices took unequal shares of the phases: {words}", false);
    }
}
