namespace SwingStudy.App.Demo.Model;

/// <summary>Lead arm and club over the whole swing: address, backswing, <see cref="Downswing"/>, and the way through.</summary>
internal sealed class Links
{
    private const double ThroughArm = 0.42;
    private const double ThroughWrist = 0.25;

    private readonly HandDrive _hands;
    private readonly Downswing _down;
    private readonly LinkState _address;
    private readonly LinkState _leaving;
    private readonly double _slope;
    private readonly double _length;
    private readonly PulseTrain _up;
    private readonly PulseTrain _along;

    /// <param name="style">The style.</param>
    /// <param name="hitsBall">Whether a ball slows the club at impact.</param>
    public Links(SwingStyle style, bool hitsBall)
    {
        (_hands, _length, _down) = (style.Hands, style.Club.Length, new(style));
        (_up, _along) = (style.Feet.Vertical, style.Feet.Target);
        _slope = style.Club.Plane * Math.PI / 180;
        var impact = _down.AtImpact;
        _leaving = impact with { ClubRate = impact.ClubRate * (hitsBall ? style.Club.SpeedKept : 1) };
        var (_, up, _) = Carried(ImpactTime);
        Shoulder = (-Downswing.BallOffset, (_hands.ArmLength * Math.Cos(impact.Arm)) + (_length * Math.Cos(impact.Club)) - up);
        _address = Address();
        Approach = HeadVelocity(impact, ImpactTime);
        HeadSpeed = Math.Sqrt((Approach.Along * Approach.Along) + (Approach.Up * Approach.Up));
    }

    /// <summary>Impact, seconds from top.</summary>
    public double ImpactTime => _down.ImpactTime;

    /// <summary>The shoulder's place at address in the plane: along the target line from the ball, and up the slope.</summary>
    public (double Along, double Up) Shoulder { get; }

    /// <summary>Speed of the club head at impact, m/s.</summary>
    public double HeadSpeed { get; }

    /// <summary>Velocity of the club head at impact in the plane: to the target, and up the slope; m/s.</summary>
    public (double Along, double Up) Approach { get; }

    /// <summary>First movement of the club, seconds from top.</summary>
    public double Start => -_hands.BackswingTime;

    /// <summary>Arms and club at a time, seconds from top.</summary>
    public LinkState At(double time)
    {
        if (time <= Start)
            return _address;
        if (time < 0)
        {
            var x = (time - Start) / _hands.BackswingTime;
            var share = x * x * x * (4 - (3 * x));
            var rate = 12 * x * x * (1 - x) / _hands.BackswingTime;
            var (arm, fold) = (_hands.TopAngle - _address.Arm, _hands.TopFold - _address.Fold);
            return new(_address.Arm + (share * arm), rate * arm, _address.Club + (share * (arm + fold)), rate * (arm + fold));
        }

        if (time <= ImpactTime)
            return _down.At(time);
        var (armWay, armRate) = Through(time - ImpactTime, ThroughArm, _leaving.ArmRate);
        var (foldWay, foldRate) = Through(time - ImpactTime, ThroughWrist, _leaving.FoldRate);
        return new(_leaving.Arm + armWay, armRate, _leaving.Club + armWay + foldWay, armRate + foldRate);
    }

    /// <summary>Places in the plane: shoulder, and the way along the arm and along the club, as directions.</summary>
    public (double Along, double Up, double Out) ShoulderAt(double time)
    {
        var (along, up, outward) = Carried(time);
        return (Shoulder.Along + along, Shoulder.Up + up, outward);
    }

    /// <summary>Speed of the hands, m/s.</summary>
    public double HandSpeed(double time)
    {
        var (along, up) = HandVelocity(At(time), time);
        var outward = _up.SpeedAt(time) * Math.Cos(_slope);
        return Math.Sqrt((along * along) + (up * up) + (outward * outward));
    }

    private (double Along, double Up) HandVelocity(LinkState state, double time) => (
        _along.SpeedAt(time) - (_hands.ArmLength * Math.Cos(state.Arm) * state.ArmRate),
        (_up.SpeedAt(time) * Math.Sin(_slope)) + (_hands.ArmLength * Math.Sin(state.Arm) * state.ArmRate));

    private (double Along, double Up) HeadVelocity(LinkState state, double time)
    {
        var (along, up) = HandVelocity(state, time);
        return (along - (_length * Math.Cos(state.Club) * state.ClubRate), up + (_length * Math.Sin(state.Club) * state.ClubRate));
    }

    /// <summary>How far the body has carried the shoulder, in the plane and out of it.</summary>
    private (double Along, double Up, double Out) Carried(double time)
    {
        var up = _up.WayAt(time);
        return (_along.WayAt(time), up * Math.Sin(_slope), up * Math.Cos(_slope));
    }

    /// <summary>Arm and club with the head just behind the ball while the shoulder is at its place of address: a triangle with known sides.</summary>
    private LinkState Address()
    {
        var (along, up) = (Shoulder.Along + 0.03, Shoulder.Up);
        var (arm, reach) = (_hands.ArmLength, Math.Sqrt((along * along) + (up * up)));
        var fold = Math.Acos(Math.Clamp(((reach * reach) - (arm * arm) - (_length * _length)) / (2 * arm * _length), -1, 1));
        var toHead = Math.Atan2(along, up);
        var inner = Math.Atan2(_length * Math.Sin(fold), arm + (_length * Math.Cos(fold)));
        return new(toHead - inner, 0, toHead - inner + fold, 0);
    }

    /// <summary>Way and rate while a rate runs out over a duration.</summary>
    private static (double Way, double Rate) Through(double time, double duration, double rate)
    {
        var x = Math.Min(1, time / duration);
        return (rate * duration * (x - (x * x) + (x * x * x / 3)), rate * (1 - x) * (1 - x));
    }
}
