namespace SwingStudy.Statistics.Description;

/// <summary>Linear association of two variables.</summary>
public static class Correlation
{
    /// <summary>Pearson's r = Σ (x − x̄)(y − ȳ) / √(Σ (x − x̄)² Σ (y − ȳ)²).</summary>
    /// <remarks>Source: Pearson (1895), Proceedings of the Royal Society 58:240–242.</remarks>
    /// <returns>From −1 to 1; null with fewer than two pairs or when either variable never varies.</returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static double? Pearson(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Check(x, y);
        return PearsonOfChecked(x, y);
    }

    /// <summary>Σ (x − x̄)(y − ȳ).</summary>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static double SumOfProducts(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Check(x, y);
        return SumOfProductsOfChecked(x, y);
    }

    /// <summary>As <see cref="Pearson"/>, for values derived from ones already checked.</summary>
    internal static double? PearsonOfChecked(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var (sx, sy) = (Summary.OfChecked(x), Summary.OfChecked(y));
        var product = SumOfProductsOfChecked(x, y);
        var scale = Math.Sqrt(sx.SumOfSquares) * Math.Sqrt(sy.SumOfSquares);
        return x.Length > 1 && scale > 0 && double.IsFinite(scale) ? Math.Clamp(product / scale, -1, 1) : null;
    }

    /// <summary>As <see cref="SumOfProducts"/>, for values derived from ones already checked.</summary>
    internal static double SumOfProductsOfChecked(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var (sx, sy) = (Summary.OfChecked(x), Summary.OfChecked(y));
        var sum = new CompensatedSum();
        for (var i = 0; i < x.Length; i++)
            sum.Add((x[i] - sx.Origin - sx.MeanAboveOrigin) * (y[i] - sy.Origin - sy.MeanAboveOrigin));
        return sum.Value;
    }

    private static void Check(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {x.Length} and {y.Length}.", nameof(y));
        Finite.Require(x, nameof(x));
        Finite.Require(y, nameof(y));
    }
}
