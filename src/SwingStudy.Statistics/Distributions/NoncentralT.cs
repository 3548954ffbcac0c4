namespace SwingStudy.Statistics.Distributions;

/// <summary>The noncentral t distribution: of (Z + δ)/√(χ²_ν/ν).</summary>
/// <remarks>
/// P(T ≤ t) = ∫ Φ(t s − δ) f(s) ds with s = √(χ²_ν/ν), integrated over ln s by the trapezoidal rule around the peak of the integrand,
/// which converges exponentially for such smooth decaying functions (Trefethen and Weideman 2014, SIAM Review 56:385–458). Both tails are
/// integrals of positive terms and keep their relative accuracy.
/// Source of the representation: Johnson, Kotz and Balakrishnan (1995), Continuous Univariate Distributions 2, ch. 31.
/// </remarks>
public static class NoncentralT
{
    /// <summary>P(T ≤ t).</summary>
    /// <param name="t">A finite number.</param>
    /// <param name="df">Degrees of freedom ν, positive, may be infinite.</param>
    /// <param name="ncp">Noncentrality δ, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t or ncp is not finite.</exception>
    public static double Cdf(double t, double df, double ncp)
    {
        Check(t, df, ncp);
        if (double.IsPositiveInfinity(df) || t == 0)
            return Normal.Cdf(t - ncp);
        return t > 0 ? NoncentralTIntegral.Rising(t, df, ncp) : NoncentralTIntegral.Falling(-t, df, -ncp);
    }

    /// <summary>P(T &gt; t).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not positive, or t or ncp is not finite.</exception>
    public static double UpperTail(double t, double df, double ncp) => Cdf(-t, df, -ncp);

    /// <summary>The t with P(T ≤ t) = <paramref name="p"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">p is not strictly between 0 and 1, df is not positive, or ncp is not finite.</exception>
    public static double Quantile(double p, double df, double ncp)
    {
        Check(0, df, ncp);
        RequireInner(p);
        var start = ncp + (Normal.Quantile(p) * Math.Sqrt(1 + (ncp * ncp / (2 * df))));
        return BracketedRoot.Search(t => Score(t, df, ncp, p), start, 0.1 * (1 + Math.Abs(start)), increasing: true);
    }

    /// <summary>The noncentrality δ with P(T ≤ t; δ) = <paramref name="p"/>: a confidence limit of δ given an observed t.</summary>
    /// <remarks>P falls from 1 to 0 as δ rises; p = 0.975 gives the lower and 0.025 the upper limit of a 95 % interval.
    /// Source: Cumming and Finch (2001), Educational and Psychological Measurement 61:532–574.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">p is not strictly between 0 and 1, df is not positive, or t is not finite.</exception>
    public static double NcpFromCdf(double p, double t, double df)
    {
        Check(t, df, 0);
        RequireInner(p);
        var start = t - (Normal.Quantile(p) * Math.Sqrt(1 + (t * t / (2 * df))));
        return BracketedRoot.Search(ncp => Score(t, df, ncp, p), start, 0.1 * (1 + (0.1 * Math.Abs(start))), increasing: false);
    }

    /// <summary>Normal score of P(T ≤ t) minus that of p, from the tail that is small near the root: nearly straight in t and in δ.</summary>
    private static double Score(double t, double df, double ncp, double p)
    {
        var score = p <= 0.5 ? Normal.Quantile(Cdf(t, df, ncp)) : -Normal.Quantile(UpperTail(t, df, ncp));
        return Math.Clamp(score, -50, 50) - Normal.Quantile(p);
    }

    private static void RequireInner(double p)
    {
        if (!(p > 0 && p < 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "Must lie strictly between 0 and 1.");
    }

    private static void Check(double t, double df, double ncp)
    {
        Parameter.RequirePositive(df, nameof(df));
        if (!double.IsFinite(t))
            throw new ArgumentOutOfRangeException(nameof(t), t, "Must be finite.");
        if (!double.IsFinite(ncp))
            throw new ArgumentOutOfRangeException(nameof(ncp), ncp, "Must be finite.");
    }
}
