namespace SwingStudy.Motion.Tests.Support;

/// <summary>A movement of fifth degree between two states of place, speed and acceleration; before and after it, it stands at its ends.</summary>
internal sealed class Quintic
{
    private readonly double _from;
    private readonly double _to;
    private readonly double[] _c;

    public Quintic(double from, double to, (double Place, double Speed, double Acceleration) start, (double Place, double Speed, double Acceleration) end)
    {
        (_from, _to) = (from, to);
        var t = to - from;
        var place = end.Place - start.Place - (start.Speed * t) - (start.Acceleration * t * t / 2);
        var speed = (end.Speed - start.Speed - (start.Acceleration * t)) * t;
        var bend = (end.Acceleration - start.Acceleration) * t * t;
        _c =
        [
            start.Place, start.Speed * t, start.Acceleration * t * t / 2,
            (10 * place) - (4 * speed) + (bend / 2), (-15 * place) + (7 * speed) - bend, (6 * place) - (3 * speed) + (bend / 2),
        ];
    }

    public bool Holds(double time) => time >= _from && time <= _to;

    public double At(double time)
    {
        var x = Math.Clamp((time - _from) / (_to - _from), 0, 1);
        return _c[0] + (x * (_c[1] + (x * (_c[2] + (x * (_c[3] + (x * (_c[4] + (x * _c[5])))))))));
    }

    /// <summary>Movements after each other as one.</summary>
    public static Func<double, double> Chain(params Quintic[] parts) => time => (parts.FirstOrDefault(part => time <= part._to) ?? parts[^1]).At(time);
}
