namespace SwingStudy.App.Demo;

/// <summary>An invented player and the values from which that player's swings are drawn.</summary>
/// <param name="Code">Pseudonym in the study.</param>
/// <param name="Aliases">What sensor, gate, headband and coach call the player: the first is the nickname, the second the code typed at the gate.</param>
/// <param name="BaselineMean">Long-run mean club head speed before the cue, m/s.</param>
/// <param name="SessionDeviation">Standard deviation between days, m/s.</param>
/// <param name="SwingDeviation">Standard deviation between swings of one day, m/s.</param>
/// <param name="Effect">What the cue adds to club head speed, m/s.</param>
/// <param name="RetainedShare">Share of the effect that is left four weeks later; 1 where there is no effect.</param>
/// <param name="FollowUpSessions">Sessions four weeks later, 1 or 2.</param>
/// <param name="BallChanges">The academy changes the player's ball on the day the cue starts.</param>
internal sealed record PlantedPlayer(
    string Code,
    IReadOnlyList<string> Aliases,
    double BaselineMean,
    double SessionDeviation,
    double SwingDeviation,
    double Effect,
    double RetainedShare,
    int FollowUpSessions = 2,
    bool BallChanges = false)
{
    /// <summary>Sessions before the cue, as drawn.</summary>
    public int BaselineSessions { get; init; }

    /// <summary>Sessions with the cue.</summary>
    public int CueSessions { get; init; }

    /// <summary>What the effect amounts to in a phase, m/s.</summary>
    public double EffectIn(string phase) => phase switch
    {
        DemoStudy.Cue => Effect,
        DemoStudy.FollowUp => Effect * RetainedShare,
        _ => 0,
    };
}
