namespace SwingStudy.Motion.Events;

/// <summary>Thresholds of the rules for events. Defaults are common practice, no source.</summary>
public sealed record EventLimits
{
    /// <summary>Head speed that shows that the swing has begun, metres per second.</summary>
    public double MovingMps { get; init; } = 0.5;

    /// <summary>Head speed below which the club is still, metres per second.</summary>
    public double StillMps { get; init; } = 0.1;

    /// <summary>Length of the still time that is address, seconds.</summary>
    public double StillS { get; init; } = 0.2;

    /// <summary>Share of the backswing's way after which the top is searched.</summary>
    public double TopShare { get; init; } = 0.4;

    /// <summary>Head speed below which the swing is over, metres per second.</summary>
    public double FinishMps { get; init; } = 0.5;

    /// <summary>For how long it must stay below, seconds.</summary>
    public double FinishS { get; init; } = 0.1;

    /// <summary>Cut-off for the slow parts of the swing (start, address, finish), hertz.</summary>
    public double SlowCutoffHz { get; init; } = 8;

    /// <summary>Cut-off for the turn at the top, hertz.</summary>
    public double TurnCutoffHz { get; init; } = 20;

    /// <summary>How near the ball's place the head stands before a swing, metres: a still moment elsewhere is a rest between swings or the top.</summary>
    public double NearBallM { get; init; } = 0.35;

    /// <summary>Longest time from start to impact, seconds.</summary>
    public double LongestSwingS { get; init; } = 4;
}
