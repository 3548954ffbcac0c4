namespace SwingStudy.App.Demo.Model;

/// <summary>Pulses along one axis, followed by two that leave the body at rest at a stated place.</summary>
internal sealed class PulseTrain
{
    private readonly Pulse[] _pulses;

    /// <param name="pulses">Pulses in any order.</param>
    /// <param name="braking">Centre and half width of the pulse that takes back most of the speed; its size follows.</param>
    /// <param name="settling">Centre and half width of the last pulse; its size follows.</param>
    /// <param name="end">Where the body comes to rest, m from its place at address.</param>
    public PulseTrain(IReadOnlyList<Pulse> pulses, (double Center, double HalfWidth) braking, (double Center, double HalfWidth) settling, double end)
    {
        // Once all pulses are over, speed = g Σ impulse and way = g Σ impulse (t - centre).
        var impulse = pulses.Sum(pulse => pulse.Impulse);
        var moment = pulses.Sum(pulse => pulse.Impulse * pulse.Center) + (end / Pulse.Gravity);
        var last = ((impulse * braking.Center) - moment) / (settling.Center - braking.Center);
        _pulses =
        [
            .. pulses,
            new(-(impulse + last) / braking.HalfWidth, braking.Center, braking.HalfWidth),
            new(last / settling.HalfWidth, settling.Center, settling.HalfWidth),
        ];
    }

    /// <summary>Acceleration, in units of gravity.</summary>
    public double At(double time)
    {
        var sum = 0.0;
        foreach (var pulse in _pulses)
            sum += pulse.At(time);
        return sum;
    }

    /// <summary>Speed, m/s.</summary>
    public double SpeedAt(double time)
    {
        var sum = 0.0;
        foreach (var pulse in _pulses)
            sum += pulse.SpeedAt(time);
        return sum;
    }

    /// <summary>Way from the place at address, m.</summary>
    public double WayAt(double time)
    {
        var sum = 0.0;
        foreach (var pulse in _pulses)
            sum += pulse.WayAt(time);
        return sum;
    }
}
