namespace SwingStudy.Statistics.Description;

/// <summary>Count, mean and scatter of one sample, accurate whatever the offset of the values.</summary>
/// <param name="Count">Number of values.</param>
/// <param name="Origin">A value near the mean, from which the mean is measured.</param>
/// <param name="MeanAboveOrigin">Mean minus <paramref name="Origin"/>, which keeps the digits that a large offset would cost.</param>
/// <param name="SumOfSquares">Sum of squared deviations from the mean, in the unit squared.</param>
public readonly record struct Summary(int Count, double Origin, double MeanAboveOrigin, double SumOfSquares)
{
    /// <summary>Arithmetic mean; null without values.</summary>
    public double? Mean => Count > 0 ? Origin + MeanAboveOrigin : null;

    /// <summary>Variance with divisor n − 1; null with fewer than two values.</summary>
    public double? Variance => Count > 1 ? SumOfSquares / (Count - 1) : null;

    /// <summary>Standard deviation with divisor n − 1; null with fewer than two values.</summary>
    public double? StandardDeviation => Variance is { } variance ? Math.Sqrt(variance) : null;

    /// <summary>Mean of this sample minus mean of <paramref name="other"/>, without the digits lost in either mean.</summary>
    public double MeanMinus(Summary other) => Origin - other.Origin + (MeanAboveOrigin - other.MeanAboveOrigin);

    /// <summary>A summary known from print.</summary>
    /// <exception cref="ArgumentException">There is no value, or the standard deviation is negative, or a number is not finite.</exception>
    public static Summary FromMoments(int count, double mean, double standardDeviation)
    {
        if (count < 1 || !double.IsFinite(mean) || !(standardDeviation >= 0 && double.IsFinite(standardDeviation)))
            throw new ArgumentException($"A summary needs n ≥ 1, a mean and a standard deviation ≥ 0; got {count}, {mean}, {standardDeviation}.");
        return new Summary(count, mean, 0, (count - 1) * standardDeviation * standardDeviation);
    }

    /// <summary>Summary of <paramref name="values"/> by the corrected two-pass algorithm with compensated sums.</summary>
    /// <remarks>
    /// m = Σx/n, then Σ(x − m)² − (Σ(x − m))²/n with the mean improved by Σ(x − m)/n. Values that are all equal give exactly zero scatter.
    /// Source: Chan, Golub and LeVeque (1983), The American Statistician 37:242–247, eq. 1.7; sums after Neumaier (1974).
    /// </remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Summary Of(ReadOnlySpan<double> values)
    {
        Finite.Require(values, nameof(values));
        return OfChecked(values);
    }

    /// <summary>As <see cref="Of"/>, for values derived from ones already checked.</summary>
    internal static Summary OfChecked(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
            return default;
        var n = values.Length;

        // Deviations from the first value: near values subtract exactly, so the offset costs no digits; equal values give exact zeros.
        var origin = values[0];
        var first = new CompensatedSum();
        foreach (var x in values)
            first.Add((x - origin) / n);
        var shift = first.Value;
        var deviations = new CompensatedSum();
        var squares = new CompensatedSum();
        foreach (var x in values)
        {
            var deviation = x - origin - shift;
            deviations.Add(deviation);
            squares.Add(deviation * deviation);
        }

        var rest = deviations.Value / n;
        var sum = Math.Max(0, squares.Value - (deviations.Value * rest));
        return new Summary(n, origin, shift + rest, sum);
    }
}
