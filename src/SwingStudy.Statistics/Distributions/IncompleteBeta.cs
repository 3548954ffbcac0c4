namespace SwingStudy.Statistics.Distributions;

/// <summary>The regularised incomplete beta function with both tails, each to full relative accuracy.</summary>
/// <remarks>
/// I_x(a, b) by its continued fraction on the side where it converges fast; the leading factor x^a y^b / B(a, b) by deviances.
/// Source: Didonato and Morris (1992), ACM TOMS 18:360–373; Lentz's evaluation after Thompson and Barnett (1986); factor: Loader (2000).
/// </remarks>
internal static class IncompleteBeta
{
    /// <summary>I_x(a, b) and 1 − I_x(a, b).</summary>
    /// <param name="a">First parameter, positive.</param>
    /// <param name="b">Second parameter, positive.</param>
    /// <param name="x">From 0 to 1.</param>
    /// <param name="y">1 − x, given separately so that it keeps its digits when x is near 1.</param>
    public static (double Lower, double Upper) Tails(double a, double b, double x, double y)
    {
        if (x <= 0)
            return (0, 1);
        if (y <= 0)
            return (1, 0);
        var factor = Factor(a, b, x, y);
        if (x < (a + 1) / (a + b + 2))
        {
            var lower = Math.Min(1, factor * ContinuedFraction(a, b, x) / a);
            return (lower, 1 - lower);
        }

        var upper = Math.Min(1, factor * ContinuedFraction(b, a, y) / b);
        return (1 - upper, upper);
    }

    /// <summary>x^a y^b / B(a, b).</summary>
    public static double Factor(double a, double b, double x, double y)
    {
        var n = a + b;
        var exponent = Deviance.StirlingError(n) - Deviance.StirlingError(a) - Deviance.StirlingError(b)
            - Deviance.Of(a, n * x) - Deviance.Of(b, n * y);
        return Math.Sqrt(a * (b / n) / (2 * Math.PI)) * Math.Exp(exponent);
    }

    private static double ContinuedFraction(double a, double b, double x)
    {
        const double tiny = 1e-300;
        var c = 1.0;
        var d = NotZero(1 - ((a + b) * x / (a + 1)));
        d = 1 / d;
        var h = d;
        for (var m = 1; m <= 100_000; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            h *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            var step = d * c;
            h *= step;
            if (Math.Abs(step - 1) < 1e-16)
                break;
        }

        return h;

        static double NotZero(double value) => Math.Abs(value) < tiny ? tiny : value;
    }
}
