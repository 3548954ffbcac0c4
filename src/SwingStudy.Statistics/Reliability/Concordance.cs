using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>Lin's concordance correlation: how close pairs lie to the line of identity.</summary>
/// <remarks>
/// ρ_c = 2 s_xy/(s_x² + s_y² + (x̄ − ȳ)²) with divisor n (Lin) or n − 1. Interval by the inverse hyperbolic tangent.
/// Var(ρ_c) = [(1 − r²) ρ_c² (1 − ρ_c²)/r² + 2 ρ_c³ (1 − ρ_c) u²/r − ρ_c⁴ u⁴/(2 r²)]/(n − 2), u = (x̄ − ȳ)/√(s_x s_y).
/// Source: Lin (1989), Biometrics 45:255–268, corrected 2000, 56:324–325.
/// </remarks>
/// <param name="Coefficient">ρ_c with divisor n, its SE and interval.</param>
/// <param name="CoefficientWithSampleDivisor">ρ_c with divisor n − 1.</param>
/// <param name="Pearson">r.</param>
/// <param name="BiasCorrection">C_b = ρ_c/r, how far the best line lies from identity; null when r = 0.</param>
/// <param name="ScaleShift">s_x/s_y.</param>
/// <param name="LocationShift">u.</param>
public sealed record Concordance(
    Estimate Coefficient, double CoefficientWithSampleDivisor, double Pearson, double? BiasCorrection, double ScaleShift, double LocationShift)
{
    /// <summary>Method word of <see cref="Coefficient"/>.</summary>
    public const string Method = "concordance-correlation";

    /// <summary>Analyses pairs.</summary>
    /// <returns>The analysis, or null with fewer than 3 pairs or a source that never varies.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the confidence is out of range.</exception>
    public static Concordance? Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (Correlation.Pearson(x, y) is not { } r || x.Length < 3)
            return null;
        double n = x.Length;
        var (sx, sy) = (Summary.Of(x), Summary.Of(y));
        var product = Correlation.SumOfProducts(x, y);
        var shift = sx.MeanMinus(sy);
        double Coefficient(double divisor) => 2 * product / divisor / ((sx.SumOfSquares / divisor) + (sy.SumOfSquares / divisor) + (shift * shift));
        var c = Coefficient(n);
        var u = shift / Math.Sqrt(Math.Sqrt(sx.SumOfSquares / n) * Math.Sqrt(sy.SumOfSquares / n));
        return new Concordance(
            WithInterval(c, r, u, n, confidence), Coefficient(n - 1), r, r != 0 ? c / r : null, Math.Sqrt(sx.SumOfSquares / sy.SumOfSquares), u);
    }

    private static Estimate WithInterval(double c, double r, double u, double n, double confidence)
    {
        c = Math.Clamp(c, -1, 1);
        var c2 = c * c;
        var u2 = u * u;
        var variance = (((1 - (r * r)) * c2 * (1 - c2) / (r * r)) + (2 * c2 * c * (1 - c) * u2 / r) - (c2 * c2 * u2 * u2 / (2 * r * r))) / (n - 2);
        if (!(variance >= 0) || Math.Abs(c) >= 1)
            return Estimate.Of(Method, c);
        var se = Math.Sqrt(variance);
        var half = Normal.Critical(confidence) * se / (1 - c2);
        var z = Math.Atanh(c);
        return Estimate.Of(Method, c, se, new Interval(Math.Tanh(z - half), Math.Tanh(z + half), confidence));
    }
}
