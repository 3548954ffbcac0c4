namespace SwingStudy.App.Demo.Model;

/// <summary>
/// Reactions under both feet of a right-handed player. Their sum is mass times (acceleration of the centre of mass + gravity), so that force and way
/// of the body agree; how it is shared, and the pairs that turn the body, have courses of their own.
/// </summary>
internal sealed class Ground
{
    /// <summary>Place of the feet across the target line, m from the ball line.</summary>
    public const double FeetZ = -0.83;

    /// <summary>Middle of the stance along the target line, m from the ball.</summary>
    public const double StanceX = -0.08;

    /// <summary>Half the distance of the feet, m.</summary>
    public const double HalfStance = 0.23;

    /// <summary>Part of body weight with which each foot presses outward.</summary>
    private const double Squeeze = 0.04;

    private readonly SwingStyle _style;
    private readonly PulseTrain _along;
    private readonly PulseTrain _up;
    private readonly PulseTrain _across;
    private readonly IReadOnlyList<Pulse> _twist;
    private readonly Course _leadShare;
    private readonly Course _leadToe;
    private readonly Course _trailToe;

    /// <param name="style">The style.</param>
    /// <param name="start">First movement, seconds from top.</param>
    /// <param name="impact">Impact, seconds from top.</param>
    public Ground(SwingStyle style, double start, double impact)
    {
        _style = style;
        (_along, _up, _across, _twist) = (style.Feet.Target, style.Feet.Vertical, style.Feet.Toe, style.Feet.Twist);
        _leadShare = new([(start, 0.5), (-0.1, 0.27), (0, 0.29), (impact - 0.04, 0.84), (impact + 0.4, 0.93)]);
        _leadToe = new([(start, 0), (0, 0.03), (impact, -0.05), (impact + 0.4, -0.06)]);
        _trailToe = new([(start, 0), (0, -0.03), (impact, 0.07), (impact + 0.4, 0.10)]);
    }

    /// <summary>Under the foot nearer the target; seconds from top.</summary>
    public FootLoad Lead(double time) => Foot(time, _leadShare.At(time), -1, StanceX + HalfStance, _leadToe.At(time), _style.Feet.FreeShares(time).Lead);

    /// <summary>Under the other foot.</summary>
    public FootLoad Trail(double time) => Foot(time, 1 - _leadShare.At(time), 1, StanceX - HalfStance, _trailToe.At(time), _style.Feet.FreeShares(time).Trail);

    private FootLoad Foot(double time, double share, int side, double x, double toe, double freeShare)
    {
        var weight = _style.Body.Weight;
        var twist = _twist.Sum(pulse => pulse.At(time));
        var up = 1 + _up.At(time);
        var force = new Point3((share * _along.At(time)) + (side * Squeeze * up), share * up, (share * _across.At(time)) + (side * twist));
        return new(weight * force, new(x, 0, FeetZ + toe), _style.Feet.FreeMoment * freeShare);
    }
}
