namespace SwingStudy.Domain.Protocols;

/// <summary>How curves are processed before anything is measured on them. The defaults are common practice, no source.</summary>
public sealed record SignalPlan
{
    /// <summary>Cut-off of the zero-lag low-pass for forces and moments, hertz, both passes together.</summary>
    public double ForceCutoffHz { get; init; } = 50;

    /// <summary>Cut-off for marks on the body (shoulders, pelvis, legs), hertz, both passes together.</summary>
    public double BodyCutoffHz { get; init; } = 12;

    /// <summary>Length of the moving polynomial for grip, wrists and elbows, which sees no sample after impact, seconds.</summary>
    public double HandWindowS { get; init; } = 0.08;

    /// <summary>Length of the moving polynomial for club head and shaft, seconds.</summary>
    public double ClubWindowS { get; init; } = 0.05;

    /// <summary>Longest gap of a mark on the body that is filled, seconds.</summary>
    public double BodyGapS { get; init; } = 0.1;

    /// <summary>Longest gap of a mark on hands or club that is filled, seconds; never across impact.</summary>
    public double ClubGapS { get; init; } = 0.04;

    /// <summary>Length of quiet standing from which body weight is taken, seconds.</summary>
    public double QuietS { get; init; } = 1;

    /// <summary>Head speed below which the club is still, metres per second.</summary>
    public double StillMps { get; init; } = 0.1;

    /// <summary>Head speed that shows that the swing has begun, metres per second.</summary>
    public double MovingMps { get; init; } = 0.5;

    /// <summary>Share of the backswing's way after which the top is searched.</summary>
    public double TopShare { get; init; } = 0.4;

    /// <summary>Reason for its numbers.</summary>
    public string Why { get; init; } = "";
}
