using MathNet.Numerics;

namespace SwingStudy.Statistics.Distributions;

/// <summary>The parts of a saddle-point density, which keep their relative accuracy where differences of log-gamma values lose it.</summary>
/// <remarks>Source: Loader C (2000), Fast and accurate computation of binomial probabilities.</remarks>
internal static class Deviance
{
    private const double HalfLogTwoPi = 0.918938533204672741780329736406;

    /// <summary>ln Γ(x + 1) − (x + ½) ln x + x − ½ ln 2π: what Stirling's formula misses. <paramref name="x"/> &gt; 0.</summary>
    public static double StirlingError(double x)
    {
        if (x <= 16)
            return SpecialFunctions.GammaLn(x + 1) - ((x + 0.5) * Math.Log(x)) + x - HalfLogTwoPi;
        var r = 1 / (x * x);
        return ((1 / 12.0) - (r * ((1 / 360.0) - (r * ((1 / 1260.0) - (r * ((1 / 1680.0) - (r * ((1 / 1188.0) - (r * (691 / 360360.0)))))))))))
            / x;
    }

    /// <summary>x ln(x/m) + m − x, never negative, without cancellation where x is near m.</summary>
    public static double Of(double x, double m)
    {
        var difference = x - m;
        if (Math.Abs(difference) >= 0.1 * (x + m))
            return (x * Math.Log(x / m)) + m - x;
        var v = difference / (x + m);
        var sum = difference * v;
        var term = 2 * x * v;
        v *= v;
        for (var j = 1; j < 1000; j++)
        {
            term *= v;
            var next = sum + (term / ((2 * j) + 1));
            if (next == sum)
                break;
            sum = next;
        }

        return sum;
    }

    /// <summary>e^{2u} − 1 − 2u without cancellation.</summary>
    public static double ExponentialRemainder(double u)
    {
        var x = 2 * u;
        if (Math.Abs(x) > 0.5)
            return Math.Exp(x) - 1 - x;
        var term = x * x / 2;
        var sum = term;
        for (var k = 3; k < 40; k++)
        {
            term *= x / k;
            var next = sum + term;
            if (next == sum)
                break;
            sum = next;
        }

        return sum;
    }
}
