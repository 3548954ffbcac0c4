namespace SwingStudy.Statistics.Distributions;

/// <summary>Student's t distribution with any positive degrees of freedom; infinite degrees of freedom are the normal distribution.</summary>
/// <remarks>
/// P(|T| &gt; t) = I_{ν/(ν + t²)}(ν/2, ½), both tails kept. Quantiles near the median are solved from the central probability, others from
/// the tail, so that neither loses digits.
/// </remarks>
public static class StudentT
{
    /// <summary>P(T ≤ t).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t is not a number.</exception>
    public static double Cdf(double t, double df) => UpperTail(-t, df);

    /// <summary>P(T &gt; t).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t is not a number.</exception>
    public static double UpperTail(double t, double df)
    {
        var (outside, inside) = OutsideInside(t, df);
        return t >= 0 ? outside / 2 : 0.5 + (inside / 2);
    }

    /// <summary>P(|T| &gt; |t|): the two-sided p value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t is not a number.</exception>
    public static double TwoSided(double t, double df) => OutsideInside(t, df).Outside;

    /// <summary>Density at t.</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t is not a number.</exception>
    public static double Density(double t, double df)
    {
        Parameter.RequireNumber(t, nameof(t));
        Parameter.RequirePositive(df, nameof(df));
        if (double.IsPositiveInfinity(df))
            return Normal.Density(t);

        // x^{ν/2} y^{½} / B(ν/2, ½) = |t| f(t), with a limit at 0 that any tiny t reaches.
        var distance = Math.Max(Math.Abs(t), 1e-100);
        var ratio = distance / Math.Sqrt(df);
        ratio *= ratio;
        return double.IsInfinity(ratio) ? 0 : IncompleteBeta.Factor(df / 2, 0.5, 1 / (1 + ratio), ratio / (1 + ratio)) / distance;
    }

    /// <summary>The t with P(T ≤ t) = <paramref name="p"/>.</summary>
    /// <param name="p">From 0 to 1; the ends give infinities.</param>
    /// <param name="df">Degrees of freedom, positive, may be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is not a probability or df is not positive.</exception>
    public static double Quantile(double p, double df)
    {
        Parameter.RequireProbability(p);
        Parameter.RequirePositive(df, nameof(df));
        if (double.IsPositiveInfinity(df))
            return Normal.Quantile(p);
        return p switch
        {
            0 => double.NegativeInfinity,
            1 => double.PositiveInfinity,
            0.5 => 0,
            < 0.5 => -Positive(p, 0.5 - p, df),
            _ => Positive(1 - p, p - 0.5, df),
        };
    }

    /// <summary>The t that leaves (1 − confidence)/2 on either side.</summary>
    public static double Critical(double confidence, double df) => Quantile(0.5 + (confidence / 2), df);

    private static double Positive(double tail, double centre, double df)
    {
        var start = Math.Max(Normal.Quantile(1 - Math.Max(tail, 1e-15)), centre);
        return centre < 0.25
            ? PositiveQuantile.Solve(x => OutsideInside(x, df).Inside / 2, x => Density(x, df), isLower: true, centre, start)
            : PositiveQuantile.Solve(x => OutsideInside(x, df).Outside / 2, x => Density(x, df), isLower: false, tail, start);
    }

    private static (double Outside, double Inside) OutsideInside(double t, double df)
    {
        Parameter.RequireNumber(t, nameof(t));
        Parameter.RequirePositive(df, nameof(df));
        if (double.IsInfinity(t))
            return (0, 1);
        if (double.IsPositiveInfinity(df))
        {
            var tail = Normal.UpperTail(Math.Abs(t));
            return (2 * tail, 1 - (2 * tail));
        }

        var ratio = t / Math.Sqrt(df);
        ratio *= ratio;
        return double.IsInfinity(ratio)
            ? (0, 1)
            : IncompleteBeta.Tails(df / 2, 0.5, 1 / (1 + ratio), ratio / (1 + ratio));
    }
}
