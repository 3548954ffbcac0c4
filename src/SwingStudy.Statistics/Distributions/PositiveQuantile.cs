namespace SwingStudy.Statistics.Distributions;

/// <summary>Quantiles of distributions on the positive half line, by Newton's method on the logarithms of value and tail.</summary>
/// <remarks>
/// ln tail against ln x is nearly straight far out on either side, so that quantiles of any size converge in a few steps; a bracket keeps
/// every step inside.
/// </remarks>
internal static class PositiveQuantile
{
    /// <summary>The x whose tail is <paramref name="target"/>.</summary>
    /// <param name="tail">Lower or upper tail probability at x, accurate when small.</param>
    /// <param name="density">Density at x.</param>
    /// <param name="isLower">Whether the tail is the lower one.</param>
    /// <param name="target">The tail probability wanted, in (0, 1).</param>
    /// <param name="start">A positive guess.</param>
    /// <returns>The quantile; 0 or infinity when it lies beyond the range of numbers.</returns>
    public static double Solve(Func<double, double> tail, Func<double, double> density, bool isLower, double target, double start)
    {
        var (low, high) = (-745.0, 709.0);
        var goal = Math.Log(target);
        var u = Math.Clamp(Math.Log(start), low + 1, high - 1);
        for (var i = 0; i < 300; i++)
        {
            var x = Math.Exp(u);
            var probability = tail(x);
            var excess = Math.Log(probability) - goal;
            if (excess == 0)
                break;
            if (excess < 0 == isLower)
                low = u;
            else
                high = u;
            var slope = x * density(x) / probability * (isLower ? 1 : -1);
            var next = u - (excess / slope);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - u) <= 2e-16 * Math.Max(1, Math.Abs(u)))
            {
                u = next;
                break;
            }

            u = next;
        }

        return u switch
        {
            <= -744 => 0,
            >= 708 => double.PositiveInfinity,
            _ => Polish(tail, density, isLower, target, Math.Exp(u)),
        };
    }

    /// <summary>One last Newton step on x itself: the logarithm of a large or small x carries fewer digits than x.</summary>
    private static double Polish(Func<double, double> tail, Func<double, double> density, bool isLower, double target, double x)
    {
        var step = (tail(x) - target) / density(x) * (isLower ? 1 : -1);
        return double.IsFinite(step) && Math.Abs(step) < 1e-9 * x ? x - step : x;
    }
}
