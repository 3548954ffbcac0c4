namespace SwingStudy.Statistics.Resampling;

/// <summary>Rounding to a decimal grid, so that numbers which differ only by floating-point noise tie when they are ranked.</summary>
internal static class DecimalGrid
{
    /// <summary>Rounds each value to the <paramref name="digits"/>-th significant decimal of <paramref name="largest"/>.</summary>
    /// <param name="values">Values that came out of a subtraction, changed in place.</param>
    /// <param name="largest">The largest magnitude that entered the subtraction.</param>
    /// <param name="digits">Significant decimals of <paramref name="largest"/> that are trusted.</param>
    public static void Snap(Span<double> values, double largest, int digits)
    {
        if (!(largest > 0) || !double.IsFinite(largest))
            return;
        var power = digits - (int)Math.Ceiling(Math.Log10(largest));
        var scale = Math.Pow(10, Math.Abs(power));
        if (!double.IsFinite(scale))
            return;
        foreach (ref var value in values)
            value = power >= 0 ? Math.Round(value * scale) / scale : Math.Round(value / scale) * scale;
    }
}
