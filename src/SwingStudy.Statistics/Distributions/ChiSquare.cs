namespace SwingStudy.Statistics.Distributions;

/// <summary>The χ² distribution with any positive degrees of freedom.</summary>
public static class ChiSquare
{
    /// <summary>P(χ² ≤ x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or x is not a number.</exception>
    public static double Cdf(double x, double df) => Tails(x, df).Lower;

    /// <summary>P(χ² &gt; x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or x is not a number.</exception>
    public static double UpperTail(double x, double df) => Tails(x, df).Upper;

    /// <summary>The x with P(χ² ≤ x) = <paramref name="p"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">p is not a probability or df is not positive.</exception>
    public static double Quantile(double p, double df)
    {
        Parameter.RequireProbability(p);
        Parameter.RequirePositive(df, nameof(df));
        return p switch
        {
            0 => 0,
            1 => double.PositiveInfinity,
            <= 0.5 => PositiveQuantile.Solve(x => Tails(x, df).Lower, x => Density(x, df), isLower: true, p, df),
            _ => PositiveQuantile.Solve(x => Tails(x, df).Upper, x => Density(x, df), isLower: false, 1 - p, df),
        };
    }

    // (x/2)^a e^{−x/2} / Γ(a + 1) with a = df/2 is (x / a) f(x).
    private static double Density(double x, double df) => IncompleteGamma.Factor(df / 2, x / 2) * (df / 2) / x;

    private static (double Lower, double Upper) Tails(double x, double df)
    {
        Parameter.RequireNumber(x, nameof(x));
        Parameter.RequirePositive(df, nameof(df));
        return IncompleteGamma.Tails(df / 2, x / 2);
    }
}
