namespace SwingStudy.Statistics.Description;

/// <summary>Count, mean and scatter of one sample, accurate whatever the offset of the values.</summary>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Arithmetic mean; null without values.</param>
/// <param name="SumOfSquares">Sum of squared deviations from the mean, in the unit squared.</param>
public readonly record struct Summary(int Count, double? Mean, double SumOfSquares)
{
    /// <summary>Variance with divisor n − 1; null with fewer than two values.</summary>
    public double? Variance => Count > 1 ? SumOfSquares / (Count - 1) : null;

    /// <summary>Standard deviation with divisor n − 1; null with fewer than two values.</summary>
    public double? StandardDeviation => Variance is { } variance ? Math.Sqrt(variance) : null;

    /// <summary>Summary of <paramref name="values"/> by the corrected two-pass algorithm with compensated sums.</summary>
    /// <remarks>
    /// m = Σx/n, then Σ(x − m)² − (Σ(x − m))²/n with the mean improved by Σ(x − m)/n. Values that are all equal give exactly zero scatter.
    /// Source: Chan, Golub and LeVeque (1983), The American Statistician 37:242–247, eq. 1.7; sums after Neumaier (1974).
    /// </remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Summary Of(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
            return new Summary(0, null, 0);
        Finite.Require(values, nameof(values));
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
        return new Summary(n, origin + (shift + rest), sum);
    }
}
