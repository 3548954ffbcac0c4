namespace SwingStudy.App.Demo.Model;

/// <summary>A raised-cosine pulse of acceleration, in units of gravity, with its two integrals in closed form.</summary>
/// <param name="Size">Greatest value, in units of gravity.</param>
/// <param name="Center">When it is greatest, seconds from top.</param>
/// <param name="HalfWidth">Seconds from its start to its greatest value.</param>
internal readonly record struct Pulse(double Size, double Center, double HalfWidth)
{
    /// <summary>Acceleration of gravity, m/s².</summary>
    public const double Gravity = 9.80665;

    /// <summary>Speed that the whole pulse gives, in seconds (times gravity: m/s).</summary>
    public double Impulse => Size * HalfWidth;

    /// <summary>Value at a time, in units of gravity.</summary>
    public double At(double time)
    {
        var x = time - Center;
        return Math.Abs(x) >= HalfWidth ? 0 : Size * 0.5 * (1 + Math.Cos(Math.PI * x / HalfWidth));
    }

    /// <summary>Speed given until a time, m/s.</summary>
    public double SpeedAt(double time)
    {
        var x = Math.Clamp(time - Center, -HalfWidth, HalfWidth);
        return Gravity * Size * 0.5 * (x + HalfWidth + (HalfWidth / Math.PI * Math.Sin(Math.PI * x / HalfWidth)));
    }

    /// <summary>Way covered until a time, m.</summary>
    public double WayAt(double time)
    {
        var x = time - Center;
        if (x <= -HalfWidth)
            return 0;
        var inside = Math.Min(x, HalfWidth);
        var unit = HalfWidth / Math.PI;
        var way = 0.5 * ((0.5 * (inside + HalfWidth) * (inside + HalfWidth)) - (unit * unit * (Math.Cos(Math.PI * inside / HalfWidth) + 1)));
        return Gravity * Size * (x > HalfWidth ? way + (HalfWidth * (x - HalfWidth)) : way);
    }
}
