namespace SwingStudy.Statistics.Distributions;

/// <summary>The F distribution with any positive degrees of freedom; infinite denominator degrees of freedom give χ²/df1.</summary>
public static class FisherF
{
    /// <summary>P(F ≤ x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A degree of freedom is not positive, or x is not a number.</exception>
    public static double Cdf(double x, double df1, double df2) => Tails(x, df1, df2).Lower;

    /// <summary>P(F &gt; x): the p value of an F test.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A degree of freedom is not positive, or x is not a number.</exception>
    public static double UpperTail(double x, double df1, double df2) => Tails(x, df1, df2).Upper;

    /// <summary>The x with P(F ≤ x) = <paramref name="p"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">p is not a probability or a degree of freedom is not positive.</exception>
    public static double Quantile(double p, double df1, double df2)
    {
        Parameter.RequireProbability(p);
        Parameter.RequirePositive(df1, nameof(df1));
        Parameter.RequirePositive(df2, nameof(df2));
        if (double.IsPositiveInfinity(df2))
            return ChiSquare.Quantile(p, df1) / df1;
        return p switch
        {
            0 => 0,
            1 => double.PositiveInfinity,
            <= 0.5 => PositiveQuantile.Solve(x => Tails(x, df1, df2).Lower, x => Density(x, df1, df2), isLower: true, p, 1),
            _ => PositiveQuantile.Solve(x => Tails(x, df1, df2).Upper, x => Density(x, df1, df2), isLower: false, 1 - p, 1),
        };
    }

    private static double Density(double x, double df1, double df2)
    {
        // With u = df1 x / (df1 x + df2): u^{df1/2} (1 − u)^{df2/2} / B = x f(x).
        var sum = (df1 * x) + df2;
        return IncompleteBeta.Factor(df1 / 2, df2 / 2, df1 * x / sum, df2 / sum) / x;
    }

    private static (double Lower, double Upper) Tails(double x, double df1, double df2)
    {
        Parameter.RequireNumber(x, nameof(x));
        Parameter.RequirePositive(df1, nameof(df1));
        Parameter.RequirePositive(df2, nameof(df2));
        if (x <= 0)
            return (0, 1);
        if (double.IsPositiveInfinity(x))
            return (1, 0);
        if (double.IsPositiveInfinity(df2))
            return IncompleteGamma.Tails(df1 / 2, df1 * x / 2);
        var sum = (df1 * x) + df2;
        return IncompleteBeta.Tails(df1 / 2, df2 / 2, df1 * x / sum, df2 / sum);
    }
}
