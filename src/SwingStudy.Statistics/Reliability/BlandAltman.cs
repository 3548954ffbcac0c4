using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>Limits of agreement of two sources of one variable, one pair a subject: first − second.</summary>
/// <remarks>
/// Limits: bias ∓ z s. SE of a limit: s √(1/n + z²/(2(n − 1))) (1999), or s √(3/n) (1986). All intervals are t with n − 1 degrees of freedom.
/// Sources: Bland and Altman (1986), Lancet 327:307–310; (1999), Statistical Methods in Medical Research 8:135–160.
/// </remarks>
/// <param name="Count">Number of pairs n.</param>
/// <param name="Bias">Mean difference with SE, interval and p.</param>
/// <param name="StandardDeviation">SD of the differences, divisor n − 1.</param>
/// <param name="Lower">Lower limit of agreement with SE and interval.</param>
/// <param name="Upper">Upper limit of agreement with SE and interval.</param>
/// <param name="Proportional">Slope of the differences on the pair means, with SE, interval and p: does the bias grow with the value.</param>
/// <param name="ProportionalCorrelation">Correlation of the differences with the pair means; null when either never varies.</param>
public sealed record BlandAltman(
    int Count,
    Estimate Bias,
    double StandardDeviation,
    Estimate Lower,
    Estimate Upper,
    Estimate Proportional,
    double? ProportionalCorrelation)
{
    /// <summary>Method word of <see cref="Bias"/>.</summary>
    public const string BiasMethod = "bland-altman-bias";

    /// <summary>Method word of <see cref="Lower"/>.</summary>
    public const string LowerMethod = "bland-altman-lower-limit";

    /// <summary>Method word of <see cref="Upper"/>.</summary>
    public const string UpperMethod = "bland-altman-upper-limit";

    /// <summary>Method word of <see cref="Proportional"/>.</summary>
    public const string ProportionalMethod = "bland-altman-proportional-bias";

    /// <summary>Analyses pairs of readings.</summary>
    /// <param name="first">The first source.</param>
    /// <param name="second">The second source, same length and order.</param>
    /// <param name="confidence">Level of the intervals.</param>
    /// <param name="coverage">Share of differences that the limits shall hold: 0.95 gives z = 1.96.</param>
    /// <returns>The analysis, or null with fewer than 3 pairs.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or a share is out of range.</exception>
    public static BlandAltman? Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double confidence = 0.95, double coverage = 0.95)
    {
        Finite.RequireConfidence(coverage);
        return WithFactor(first, second, Normal.Critical(coverage), isFormOf1986: false, confidence);
    }

    /// <summary>The 1986 form: limits at 2 SD, SE of a limit s √(3/n).</summary>
    /// <returns>The analysis, or null with fewer than 3 pairs.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the confidence is out of range.</exception>
    public static BlandAltman? Of1986(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double confidence = 0.95) =>
        WithFactor(first, second, 2, isFormOf1986: true, confidence);

    /// <summary>Limits of agreement of the ratio first/second, from logarithms back-transformed.</summary>
    /// <returns>The analysis in ratios, the proportional part still of the logarithms; null with fewer than 3 pairs or a value that is not positive.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or a share is out of range.</exception>
    public static BlandAltman? OfRatios(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double confidence = 0.95, double coverage = 0.95)
    {
        Finite.Require(first, nameof(first));
        Finite.Require(second, nameof(second));
        if (first.ContainsAnyInRange(-Finite.Largest, 0) || second.ContainsAnyInRange(-Finite.Largest, 0))
            return null;
        return Of(Logarithms(first), Logarithms(second), confidence, coverage) is { } analysis
            ? analysis with { Bias = Ratio(analysis.Bias), Lower = Ratio(analysis.Lower), Upper = Ratio(analysis.Upper) }
            : null;
    }

    private static BlandAltman? WithFactor(
        ReadOnlySpan<double> first, ReadOnlySpan<double> second, double z, bool isFormOf1986, double confidence)
    {
        Finite.Require(first, nameof(first));
        Finite.Require(second, nameof(second));
        Finite.RequireConfidence(confidence);
        if (first.Length != second.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {first.Length} and {second.Length}.", nameof(second));
        var n = first.Length;
        if (n < 3)
            return null;
        var (differences, means) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
            (differences[i], means[i]) = (first[i] - second[i], (first[i] / 2) + (second[i] / 2));
        var summary = Summary.OfChecked(differences);
        var (bias, s) = (summary.Mean!.Value, summary.StandardDeviation!.Value);
        var limitError = isFormOf1986 ? s * Math.Sqrt(3.0 / n) : s * Math.Sqrt((1.0 / n) + (z * z / (2 * (n - 1))));
        return new BlandAltman(
            n,
            Tested(BiasMethod, bias, s / Math.Sqrt(n), n - 1, confidence),
            s,
            Limit(LowerMethod, bias - (z * s), limitError, n - 1, confidence),
            Limit(UpperMethod, bias + (z * s), limitError, n - 1, confidence),
            Slope(differences, means, confidence),
            Correlation.PearsonOfChecked(means, differences));
    }

    private static Estimate Slope(double[] differences, double[] means, double confidence)
    {
        var (x, y) = (Summary.OfChecked(means), Summary.OfChecked(differences));
        if (!(x.SumOfSquares > 0))
            return Estimate.NotDefined(ProportionalMethod, "the pair means never vary");
        var product = Correlation.SumOfProductsOfChecked(means, differences);
        var slope = product / x.SumOfSquares;
        var df = differences.Length - 2;
        var residual = Math.Max(0, y.SumOfSquares - (slope * product)) / df;
        return Tested(ProportionalMethod, slope, Math.Sqrt(residual / x.SumOfSquares), df, confidence);
    }

    private static Estimate Tested(string method, double value, double se, double df, double confidence)
    {
        double? p = se > 0 ? StudentT.TwoSided(value / se, df) : value == 0 ? 1 : null;
        return Estimate.Of(method, value, se, Limits.StudentT(value, se, df, confidence), p, df);
    }

    private static Estimate Limit(string method, double value, double se, double df, double confidence) =>
        Estimate.Of(method, value, se, Limits.StudentT(value, se, df, confidence), degreesOfFreedom: df);

    private static double[] Logarithms(ReadOnlySpan<double> values)
    {
        var logarithms = new double[values.Length];
        for (var i = 0; i < logarithms.Length; i++)
            logarithms[i] = Math.Log(values[i]);
        return logarithms;
    }

    private static Estimate Ratio(Estimate logarithm)
    {
        Interval? interval = logarithm.Interval is { } i ? i with { Low = Math.Exp(i.Low), High = Math.Exp(i.High) } : null;
        var value = Math.Exp(logarithm.Value!.Value);
        return Estimate.Of(logarithm.Method + "-ratio", value, value * logarithm.StandardError, interval, logarithm.P, logarithm.DegreesOfFreedom);
    }
}
