namespace SwingStudy.Statistics.Distributions;

/// <summary>The regularised incomplete gamma function with both tails, each to full relative accuracy.</summary>
/// <remarks>
/// Series below a + 1, continued fraction above; the leading factor x^a e^{−x} / Γ(a + 1) by deviances.
/// Source: Gautschi (1979), ACM TOMS 5:466–481; factor: Loader (2000).
/// </remarks>
internal static class IncompleteGamma
{
    /// <summary>P(a, x) and Q(a, x) = 1 − P(a, x); <paramref name="a"/> &gt; 0.</summary>
    public static (double Lower, double Upper) Tails(double a, double x)
    {
        if (x <= 0)
            return (0, 1);
        if (double.IsPositiveInfinity(x))
            return (1, 0);
        var factor = Factor(a, x);
        if (x < a + 1)
        {
            var lower = Math.Min(1, factor * Series(a, x));
            return (lower, 1 - lower);
        }

        var upper = Math.Min(1, factor * a * ContinuedFraction(a, x));
        return (1 - upper, upper);
    }

    /// <summary>x^a e^{−x} / Γ(a + 1).</summary>
    public static double Factor(double a, double x) =>
        Math.Exp(-Deviance.StirlingError(a) - Deviance.Of(a, x)) / Math.Sqrt(2 * Math.PI * a);

    private static double Series(double a, double x)
    {
        var term = 1.0;
        var sum = 1.0;
        for (var n = 1; n <= 1_000_000; n++)
        {
            term *= x / (a + n);
            sum += term;
            if (term < sum * 1e-17)
                break;
        }

        return sum;
    }

    private static double ContinuedFraction(double a, double x)
    {
        const double tiny = 1e-300;
        var b = x + 1 - a;
        var c = 1 / tiny;
        var d = 1 / NotZero(b);
        var h = d;
        for (var n = 1; n <= 1_000_000; n++)
        {
            var coefficient = -n * (n - a);
            b += 2;
            d = 1 / NotZero((coefficient * d) + b);
            c = NotZero(b + (coefficient / c));
            var step = d * c;
            h *= step;
            if (Math.Abs(step - 1) < 1e-16)
                break;
        }

        return h;

        static double NotZero(double value) => Math.Abs(value) < tiny ? tiny : value;
    }
}
