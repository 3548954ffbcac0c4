namespace SwingStudy.App.Demo.Model;

/// <summary>
/// Arms and club driven forward in time from top to impact: two links in a sloping plane, hung from a shoulder that the body carries up and to the
/// target.
/// </summary>
/// <remarks>
/// The arms follow their drive; in addition the acceleration of the shoulder turns them as it turns any hanging rod, by 3/2 of it over their
/// length: a push from the ground while the arms are level speeds them, a push while they hang does not. The fold of the wrists is held until the
/// release; from then on the club turns by the acceleration of the hands, gravity, and the torque and resistance of the wrists. Club speed is a
/// result. Solved with the Runge-Kutta method of order 4. Source: equations of motion of a driven double pendulum, any textbook of mechanics.
/// </remarks>
internal sealed class Downswing
{
    /// <summary>Step of the solution, s.</summary>
    public const double Step = 0.001;

    /// <summary>Place of the ball along the target line from the shoulder's place at address, m.</summary>
    public const double BallOffset = -0.08;

    /// <summary>A rod of even mass that hangs from one end turns by 3/2 of the end's acceleration over its length.</summary>
    private const double RodShare = 1.5;

    private const double Longest = 0.6;

    private readonly SwingStyle _style;
    private readonly PulseTrain _up;
    private readonly PulseTrain _along;
    private readonly double _slope;
    private readonly List<LinkState> _states = [];

    public Downswing(SwingStyle style)
    {
        (_style, _up, _along) = (style, style.Feet.Vertical, style.Feet.Target);
        _slope = Math.Sin(style.Club.Plane * Math.PI / 180);
        var hands = style.Hands;
        var state = new LinkState(hands.TopAngle, 0, hands.TopAngle + hands.TopFold, 0);
        _states.Add(state);
        for (var time = 0.0; time < Longest; time += Step)
        {
            var next = Stepped(state, time, Step);
            if (HeadBeyondBall(next, time + Step) > 0 && Math.Cos(next.Arm) > 0.5)
            {
                ImpactTime = time + Crossing(state, time);
                AtImpact = Stepped(state, time, ImpactTime - time);
                return;
            }

            _states.Add(state = next);
        }

        throw new InvalidOperationException("With these parameters the club does not come down to the ball.");
    }

    /// <summary>Impact, seconds from top.</summary>
    public double ImpactTime { get; }

    /// <summary>Arms and club at impact, before the ball slows the club.</summary>
    public LinkState AtImpact { get; }

    /// <summary>The state between top and impact, by cubic interpolation between steps.</summary>
    public LinkState At(double time)
    {
        if (time >= ImpactTime)
            return AtImpact;
        var index = Math.Min((int)(time / Step), _states.Count - 1);
        var from = index * Step;
        var (start, end, length) = index + 1 < _states.Count ? (_states[index], _states[index + 1], Step) : (_states[index], AtImpact, ImpactTime - from);
        var x = (time - from) / length;
        var (arm, armRate) = Hermite(x, length, start.Arm, start.ArmRate, end.Arm, end.ArmRate);
        var (club, clubRate) = Hermite(x, length, start.Club, start.ClubRate, end.Club, end.ClubRate);
        return new(arm, armRate, club, clubRate);
    }

    private LinkState Stepped(LinkState state, double time, double step)
    {
        var a = Rates(state, time);
        var b = Rates(state.Moved(a, step / 2), time + (step / 2));
        var c = Rates(state.Moved(b, step / 2), time + (step / 2));
        var d = Rates(state.Moved(c, step), time + step);
        return state.Moved(a, step / 6).Moved(b, step / 3).Moved(c, step / 3).Moved(d, step / 6);
    }

    private LinkState Rates(LinkState state, double time)
    {
        var (hands, club) = (_style.Hands, _style.Club);
        var (sin, cos) = Math.SinCos(state.Arm);
        var (up, along) = (Pulse.Gravity * _slope * _up.At(time), Pulse.Gravity * _along.At(time));
        var arm = -hands.DriveAt(time).Change - (RodShare / hands.ArmLength * ((up * sin) - (along * cos)));
        var held = time < hands.ReleaseTime;
        if (!held)
        {
            var (clubSin, clubCos) = Math.SinCos(state.Club);
            var handsAlong = along + (hands.ArmLength * ((-cos * arm) + (sin * state.ArmRate * state.ArmRate)));
            var handsUp = up + (hands.ArmLength * ((sin * arm) + (cos * state.ArmRate * state.ArmRate)));
            var thrown = club.FirstMoment * ((clubCos * handsAlong) - (clubSin * (handsUp + (Pulse.Gravity * _slope))));
            var turn = (thrown - hands.TorqueAt(time) - (hands.WristResistance * state.FoldRate)) / club.Inertia;
            held = state.Fold >= hands.TopFold && turn > arm;
            if (!held)
                return new(state.ArmRate, arm, state.ClubRate, turn);
        }

        return new(state.ArmRate, arm, state.ArmRate, arm);
    }

    private double HeadBeyondBall(LinkState state, double time) =>
        _along.WayAt(time) - (_style.Hands.ArmLength * Math.Sin(state.Arm)) - (_style.Club.Length * Math.Sin(state.Club)) - BallOffset;

    private double Crossing(LinkState state, double time)
    {
        var (low, high) = (0.0, Step);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (HeadBeyondBall(Stepped(state, time, middle), time + middle) > 0)
                high = middle;
            else
                low = middle;
        }

        return high;
    }

    private static (double Value, double Rate) Hermite(double x, double length, double from, double fromRate, double to, double toRate)
    {
        var (square, cube) = (x * x, x * x * x);
        var value = (((2 * cube) - (3 * square) + 1) * from) + ((cube - (2 * square) + x) * length * fromRate)
            + (((3 * square) - (2 * cube)) * to) + ((cube - square) * length * toRate);
        var rate = ((((6 * square) - (6 * x)) * (from - to)) / length) + (((3 * square) - (4 * x) + 1) * fromRate) + (((3 * square) - (2 * x)) * toRate);
        return (value, rate);
    }
}
