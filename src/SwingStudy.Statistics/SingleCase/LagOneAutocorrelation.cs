using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>How strongly each value of a short series carries over to the next.</summary>
public static class LagOneAutocorrelation
{
    /// <summary>Method word of <see cref="Conventional"/>.</summary>
    public const string ConventionalMethod = "lag1-autocorrelation";

    /// <summary>Method word of <see cref="BiasCorrected"/>.</summary>
    public const string BiasCorrectedMethod = "lag1-autocorrelation-huitema-mckean";

    /// <summary>r₁ as in <see cref="Autocorrelation.Lag1"/>: biased towards negative values in short series.</summary>
    /// <param name="values">Values or residuals in order of time, equally spaced, all finite.</param>
    /// <returns>Undefined with fewer than two values or values that are all equal.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate Conventional(ReadOnlySpan<double> values) =>
        Autocorrelation.Lag1(values) is { } r && double.IsFinite(r)
            ? new Estimate { Method = ConventionalMethod, Value = r }
            : Estimate.NotDefined(ConventionalMethod, "needs at least two values that are not all equal and lie within the range of numbers");

    /// <summary>r₁ + p/n: the bias of residuals after <paramref name="coefficients"/> regression coefficients, taken off to first order.</summary>
    /// <remarks>
    /// With the mean alone p = 1. Can exceed 1 in very short series. Source: Huitema and McKean (1991), Psychological Bulletin 110:291–304;
    /// the form for residuals of intervention models after Huitema and McKean (2000), Educational and Psychological Measurement 60:38–58.
    /// </remarks>
    /// <param name="values">Residuals in order of time, equally spaced, all finite.</param>
    /// <param name="coefficients">Number p of coefficients behind the residuals, at least 1.</param>
    /// <returns>Undefined with fewer than two values or values that are all equal.</returns>
    /// <exception cref="ArgumentException">A value is not finite or <paramref name="coefficients"/> is below 1.</exception>
    public static Estimate BiasCorrected(ReadOnlySpan<double> values, int coefficients)
    {
        if (coefficients < 1)
            throw new ArgumentException($"At least the mean was fitted: 1 coefficient or more, got {coefficients}.", nameof(coefficients));
        var plain = Conventional(values);
        return plain.Value is { } r
            ? new Estimate { Method = BiasCorrectedMethod, Value = r + ((double)coefficients / values.Length) }
            : Estimate.NotDefined(BiasCorrectedMethod, plain.Undefined!);
    }
}
