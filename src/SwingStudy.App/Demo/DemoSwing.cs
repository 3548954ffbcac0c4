using NodaTime;
using SwingStudy.App.Demo.Model;

namespace SwingStudy.App.Demo;

/// <summary>One simulated swing: what happened, and which device went wrong about it.</summary>
/// <param name="StruckAt">Moment of impact, or of passing the ball's place.</param>
/// <param name="IsPractice">Without a ball.</param>
/// <param name="Style">How the player swings this time.</param>
/// <param name="Scatter">By how much that differs from the swing that the player means.</param>
/// <param name="SpeedRatio">Ball speed over club head speed.</param>
/// <param name="LaunchAngle">Degrees up.</param>
/// <param name="LaunchDirection">Degrees to the right.</param>
/// <param name="Spin">Turns a minute.</param>
/// <param name="AttackAngle">Degrees up.</param>
/// <param name="Misread">What the bay sensor misread.</param>
/// <param name="BayNoise">Error of the bay sensor's club speed, m/s.</param>
/// <param name="GateNoise">Error of the gate's club speed, m/s.</param>
/// <param name="MissedByBay">The bay sensor has no row.</param>
/// <param name="MissedByGate">The gate has no pass.</param>
internal sealed record DemoSwing(
    Instant StruckAt,
    bool IsPractice,
    SwingStyle Style,
    SwingScatter Scatter,
    double SpeedRatio,
    double LaunchAngle,
    double LaunchDirection,
    double Spin,
    double AttackAngle,
    Misread Misread,
    double BayNoise,
    double GateNoise,
    bool MissedByBay,
    bool MissedByGate)
{
    private readonly Lazy<SwingModel> _movement = new(() => new SwingModel(Style, hitsBall: !IsPractice));

    /// <summary>The movement that follows.</summary>
    public SwingModel Movement => _movement.Value;

    /// <summary>Club head speed, m/s.</summary>
    public double ClubSpeed => Movement.ClubHeadSpeed;

    /// <summary>Ball speed, m/s.</summary>
    public double BallSpeed => ClubSpeed * SpeedRatio;

    /// <summary>Carry in metres: a straight line through common pairs of ball speed and carry with a driver (common practice, no source).</summary>
    public double Carry => (4.4 * BallSpeed) - 74;
}
