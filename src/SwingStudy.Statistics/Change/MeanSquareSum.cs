namespace SwingStudy.Statistics.Change;

/// <summary>A variance that is a sum of mean squares, each with degrees of freedom of its own, and the degrees of freedom of the sum.</summary>
/// <remarks>
/// Satterthwaite: ν = (Σ t)²/Σ (t²/ν_t) over the terms t. Where terms are taken off, ν may fall below <see cref="LeastDegrees"/>: the difference is then
/// too small against what it is a difference of to be known at all. Nothing is taken off in that case: the sum is too large rather than known too badly
/// for any interval, and has the degrees of freedom of its positive terms. Source: Satterthwaite (1946), Biometrics Bulletin 2:110–114, who warns of
/// negative terms; the limit is this program's choice, and <c>scripts/calibrate</c> shows what intervals are worth with it.
/// </remarks>
internal readonly struct MeanSquareSum
{
    private const double LeastDegrees = 1;

    public MeanSquareSum(params ReadOnlySpan<MeanSquareTerm> terms)
    {
        var (value, spread) = Sums(terms, takesOff: true);
        var df = Satterthwaite(value, spread);
        if (df < LeastDegrees)
        {
            (value, spread) = Sums(terms, takesOff: false);
            df = Satterthwaite(value, spread);
        }

        (Value, DegreesOfFreedom) = (value, df);
    }

    /// <summary>The variance, 0 or more where what is taken off is part of what is there.</summary>
    public double Value { get; }

    /// <summary>Its degrees of freedom; null where all terms are 0.</summary>
    public double? DegreesOfFreedom { get; }

    private static double? Satterthwaite(double value, double spread) => spread > 0 ? value * value / spread : null;

    private static (double Value, double Spread) Sums(ReadOnlySpan<MeanSquareTerm> terms, bool takesOff)
    {
        double value = 0, spread = 0;
        foreach (var term in terms)
        {
            if (term.DegreesOfFreedom > 0 && (takesOff || term.Value > 0))
            {
                value += term.Value;
                spread += term.Value * term.Value / term.DegreesOfFreedom;
            }
        }

        return (value, spread);
    }
}
