using SwingStudy.App.Demo.Model;

namespace SwingStudy.App.Demo;

/// <summary>An invented player: how that player swings, and what the cue changes in it. Speeds follow from the swing model.</summary>
/// <param name="Code">Pseudonym in the study.</param>
/// <param name="Aliases">What sensor, gate, headband and coach call the player: the first is the nickname, the second the code typed at the gate.</param>
/// <param name="Body">Mass, height and hand.</param>
/// <param name="Slowness">Factor by which the downswing takes longer than a strong player's.</param>
/// <param name="PushSize">By how much the vertical force exceeds body weight at its peak before the cue.</param>
/// <param name="PushDelay">How much later than a strong player the vertical force comes before the cue, s.</param>
/// <param name="ReleaseTime">When the wrists let go before the cue, seconds from top in a strong player's time.</param>
/// <param name="Cue">What the cue changes.</param>
/// <param name="SessionDeviation">Standard deviation of club head speed between days, m/s.</param>
/// <param name="SwingDeviation">Standard deviation of club head speed between swings of one day, m/s.</param>
/// <param name="RetainedShare">Share of the change that is left four weeks later; 1 where there is no change.</param>
/// <param name="Devices">Which devices beside the bay follow the player's movement.</param>
/// <param name="FollowUpSessions">Sessions four weeks later, 1 or 2.</param>
/// <param name="BallChanges">The academy changes the player's ball on the day the cue starts.</param>
internal sealed record PlantedPlayer(
    string Code,
    IReadOnlyList<string> Aliases,
    PlayerBody Body,
    double Slowness,
    double PushSize,
    double PushDelay,
    double ReleaseTime,
    PlantedCue Cue,
    double SessionDeviation,
    double SwingDeviation,
    double RetainedShare,
    MovementDevices Devices = MovementDevices.None,
    int FollowUpSessions = 2,
    bool BallChanges = false)
{
    /// <summary>A push is preceded by sinking, in this proportion to it.</summary>
    private const double SinkOfPush = 0.264;

    private readonly Dictionary<string, IReadOnlyDictionary<string, double>> _truths = new(StringComparer.Ordinal);

    /// <summary>Sessions before the cue, as drawn.</summary>
    public int BaselineSessions { get; init; }

    /// <summary>Sessions with the cue.</summary>
    public int CueSessions { get; init; }

    /// <summary>Club head speed before the cue, m/s: what the model makes of the player's way of swinging.</summary>
    public double BaselineMean => MeanIn("club_head_speed", DemoStudy.Baseline);

    /// <summary>What the cue adds to club head speed, m/s.</summary>
    public double Effect => EffectIn("club_head_speed", DemoStudy.Cue);

    /// <summary>Swings as the player means them in a phase.</summary>
    /// <param name="phase">The phase.</param>
    /// <param name="scatter">What differs from the meant swing.</param>
    public SwingStyle StyleIn(string phase, SwingScatter scatter = default)
    {
        var share = ShareIn(phase);
        var size = PushSize + (share * Cue.PushMore) + scatter.PushSize;
        var feet = new FootWork { PushSize = size, SinkSize = SinkOfPush * size };
        var hands = new HandDrive { ReleaseTime = ReleaseTime + (share * Cue.ReleaseLater) };
        return new(Body, Club.Driver, hands.Slowed(Slowness * (1 - scatter.Faster)), feet.Shifted(PushDelay - (share * Cue.PushEarlier) + scatter.PushTime));
    }

    /// <summary>Value of a variable of the dictionary in the swing that the player means in a phase, canonical unit.</summary>
    public double MeanIn(string variable, string phase) => TruthIn(phase)[variable];

    /// <summary>Values of the swing that the player means, by phase and variable.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, double>> Means =>
        new[] { DemoStudy.Baseline, DemoStudy.Cue, DemoStudy.FollowUp }.ToDictionary(phase => phase, TruthIn, StringComparer.Ordinal);

    /// <summary>By how much that value differs from baseline in a phase.</summary>
    public double EffectIn(string variable, string phase) => MeanIn(variable, phase) - MeanIn(variable, DemoStudy.Baseline);

    /// <summary>Whether any device of the demo delivers the variable for the player.</summary>
    public bool Has(string variable) => variable switch
    {
        "club_head_speed" => true,
        "angle_lost_before_grip_peak" => Devices.HasFlag(MovementDevices.Markers),
        _ => Devices.HasFlag(MovementDevices.Plates),
    };

    private IReadOnlyDictionary<string, double> TruthIn(string phase)
    {
        lock (_truths)
        {
            if (!_truths.TryGetValue(phase, out var truth))
                _truths[phase] = truth = SwingTruth.Of(new SwingModel(StyleIn(phase)));
            return truth;
        }
    }

    private double ShareIn(string phase) => phase switch
    {
        DemoStudy.Cue => 1,
        DemoStudy.FollowUp => RetainedShare,
        _ => 0,
    };
}
