namespace SwingStudy.Statistics.Chance;

/// <summary>Standard normal numbers from a uniform stream by the polar method.</summary>
/// <remarks>Source: Marsaglia and Bray (1964), SIAM Review 6:260–264. Not for use by two threads at once.</remarks>
/// <param name="chance">The stream that is drawn from.</param>
public sealed class NormalStream(Xoshiro256 chance)
{
    private double _spare = double.NaN;

    /// <summary>The next number.</summary>
    public double Next()
    {
        if (!double.IsNaN(_spare))
        {
            var ready = _spare;
            _spare = double.NaN;
            return ready;
        }

        while (true)
        {
            var u = (2 * chance.NextUnit()) - 1;
            var v = (2 * chance.NextUnit()) - 1;
            var square = (u * u) + (v * v);
            if (square is >= 1 or 0)
                continue;
            var factor = Math.Sqrt(-2 * Math.Log(square) / square);
            _spare = v * factor;
            return u * factor;
        }
    }
}
