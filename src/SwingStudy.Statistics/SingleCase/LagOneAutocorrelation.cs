using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>How strongly each value of a series carries over to the next.</summary>
public static class LagOneAutocorrelation
{
    /// <summary>Method word of <see cref="Conventional"/>.</summary>
    public const string ConventionalMethod = "lag1-autocorrelation";

    /// <summary>Method word of <see cref="BiasCorrected"/>.</summary>
    public const string BiasCorrectedMethod = "lag1-autocorrelation-huitema-mckean";

    /// <summary>r₁ = Σ(eₜ − m)(eₜ₋₁ − m)/Σ(eₜ − m)²: biased towards negative values in short series.</summary>
    /// <remarks>Source: Box and Jenkins (1976), Time Series Analysis, ch. 2.</remarks>
    /// <param name="values">Values or residuals in order of time, equally spaced, all finite.</param>
    /// <returns>Undefined with fewer than two values or values that are all equal.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate Conventional(ReadOnlySpan<double> values)
    {
        Finite.Require(values, nameof(values));
        if (values.Length < 2)
            return Estimate.NotDefined(ConventionalMethod, $"needs at least two values, got {values.Length}");
        var origin = values[0];
        var scale = 0.0;
        foreach (var x in values)
            scale = Math.Max(scale, Math.Abs(x - origin));
        if (!(scale > 0) || !double.IsFinite(scale))
            return Estimate.NotDefined(ConventionalMethod, "needs values that are not all equal and lie within the range of numbers");
        var mean = 0.0;
        foreach (var x in values)
            mean += (x - origin) / scale / values.Length;
        double products = 0, squares = 0, last = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var e = ((values[i] - origin) / scale) - mean;
            products += i > 0 ? e * last : 0;
            squares += e * e;
            last = e;
        }

        return new Estimate { Method = ConventionalMethod, Value = products / squares };
    }

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
