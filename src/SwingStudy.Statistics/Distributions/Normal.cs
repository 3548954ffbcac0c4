using MathNet.Numerics;

namespace SwingStudy.Statistics.Distributions;

/// <summary>The standard normal distribution.</summary>
/// <remarks>Tails keep their relative accuracy: each is computed directly, never as 1 minus the other.</remarks>
public static class Normal
{
    private const double LogSqrtTwoPi = 0.918938533204672741780329736406;

    /// <summary>P(Z ≤ z).</summary>
    public static double Cdf(double z) => UpperTail(-z);

    /// <summary>P(Z &gt; z).</summary>
    public static double UpperTail(double z)
    {
        Parameter.RequireNumber(z, nameof(z));
        if (double.IsInfinity(z))
            return z > 0 ? 0 : 1;
        return Math.Abs(z) < 10
            ? 0.5 * SpecialFunctions.Erfc(z / Constants.Sqrt2)
            : FarTail(z);
    }

    /// <summary>Density at z.</summary>
    public static double Density(double z) => Math.Exp((-z * z / 2) - LogSqrtTwoPi);

    /// <summary>ln P(Z &gt; z), also where the probability itself is too small for a number.</summary>
    public static double LogUpperTail(double z)
    {
        Parameter.RequireNumber(z, nameof(z));
        if (z < 30)
            return Math.Log(UpperTail(z));
        var r = 1 / (z * z);
        return (-z * z / 2) - Math.Log(z) - LogSqrtTwoPi + Math.Log(1 - (r * (1 - (r * (3 - (r * (15 - (r * 105))))))));
    }

    /// <summary>The z with P(Z ≤ z) = <paramref name="p"/>.</summary>
    /// <param name="p">From 0 to 1; the ends give infinities.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is not a probability.</exception>
    public static double Quantile(double p)
    {
        Parameter.RequireProbability(p);
        return p switch
        {
            0 => double.NegativeInfinity,
            1 => double.PositiveInfinity,
            0.5 => 0,
            < 0.5 => -FromUpperTail(p),
            _ => FromUpperTail(1 - p),
        };
    }

    /// <summary>The z that leaves (1 − confidence)/2 on either side: 1.96 for 0.95.</summary>
    public static double Critical(double confidence) => Quantile(0.5 + (confidence / 2));

    /// <summary>Far out the continued fraction settles in a few terms and keeps more digits than the rational form of erfc.</summary>
    private static double FarTail(double z)
    {
        var tail = 0.5 * IncompleteGamma.Tails(0.5, z * z / 2).Upper;
        return z > 0 ? tail : 1 - tail;
    }

    /// <summary>A rational start, then Halley steps on the logarithm of the tail; q is at most one half.</summary>
    private static double FromUpperTail(double q)
    {
        // Abramowitz and Stegun 26.2.23: absolute error below 4.5e-4, refined to full accuracy below.
        var t = Math.Sqrt(-2 * Math.Log(q));
        var z = t - ((2.515517 + (t * (0.802853 + (t * 0.010328)))) / (1 + (t * (1.432788 + (t * (0.189269 + (t * 0.001308)))))));
        for (var i = 0; i < 4; i++)
        {
            var ratio = Density(z) / UpperTail(z);
            var error = LogUpperTail(z) - Math.Log(q);
            var step = error / ratio;

            // d/dz ln Q = −r, d²/dz² ln Q = z r − r².
            z += step / (1 + (0.5 * step * (z - ratio)));
            if (Math.Abs(step) < 1e-16 * Math.Abs(z))
                break;
        }

        return z;
    }
}
