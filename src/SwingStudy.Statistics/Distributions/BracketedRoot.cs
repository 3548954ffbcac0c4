namespace SwingStudy.Statistics.Distributions;

/// <summary>The root of a continuous monotone function, found by widening a bracket and then narrowing it without derivatives.</summary>
/// <remarks>Source: Chandrupatla (1997), A new hybrid quadratic/bisection algorithm, Advances in Engineering Software 28:145–149.</remarks>
internal static class BracketedRoot
{
    /// <summary>Searches from <paramref name="start"/> with growing steps until the sign changes, then solves.</summary>
    /// <param name="function">Monotone; its sign changes once.</param>
    /// <param name="start">A guess.</param>
    /// <param name="step">First step, positive.</param>
    /// <param name="increasing">Whether the function rises.</param>
    /// <returns>The root; an infinity when the sign does not change within the range of numbers.</returns>
    public static double Search(Func<double, double> function, double start, double step, bool increasing)
    {
        var a = start;
        var fa = function(a);
        if (fa == 0)
            return a;
        var direction = fa < 0 == increasing ? 1 : -1;
        while (true)
        {
            var b = a + (direction * step);
            if (!double.IsFinite(b) || Math.Abs(b) > 1e300)
                return direction * double.PositiveInfinity;
            var fb = function(b);
            if (fb == 0)
                return b;
            if (fa < 0 != fb < 0)
                return Solve(function, a, fa, b, fb);
            a = b;
            fa = fb;
            step *= 2;
        }
    }

    /// <summary>The root between two points of opposite sign, to the last digits.</summary>
    public static double Solve(Func<double, double> function, double lower, double upper) =>
        Solve(function, lower, function(lower), upper, function(upper));

    private static double Solve(Func<double, double> function, double a, double fa, double b, double fb)
    {
        if (fa == 0)
            return a;
        if (fb == 0)
            return b;
        if (fa < 0 == fb < 0)
            throw new ArgumentException("The function must change its sign between the two points.");
        double c = a, fc = fa;
        var t = 0.5;
        for (var i = 0; i < 400; i++)
        {
            var x = a + (t * (b - a));
            var fx = function(x);
            if (fx < 0 == fa < 0)
            {
                (c, fc) = (a, fa);
            }
            else
            {
                (c, fc) = (b, fb);
                (b, fb) = (a, fa);
            }

            (a, fa) = (x, fx);
            var (best, fbest) = Math.Abs(fb) < Math.Abs(fa) ? (b, fb) : (a, fa);
            var limit = 0.5 * ((4e-16 * Math.Abs(best)) + 1e-320) / Math.Abs(b - c);
            if (fbest == 0 || limit > 0.5 || a == b)
                return best;
            t = NextShare(a, fa, b, fb, c, fc);
            t = Math.Clamp(t, limit, 1 - limit);
        }

        return Math.Abs(fb) < Math.Abs(fa) ? b : a;
    }

    private static double NextShare(double a, double fa, double b, double fb, double c, double fc)
    {
        var xi = (a - b) / (c - b);
        var phi = (fa - fb) / (fc - fb);
        if (phi * phi >= xi || (1 - phi) * (1 - phi) >= 1 - xi)
            return 0.5;
        return (fa / (fb - fa) * (fc / (fb - fc))) + ((c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb)));
    }
}
