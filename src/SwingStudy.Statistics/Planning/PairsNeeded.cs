using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Planning;

/// <summary>How many pairs a paired t test needs for a power, and the power at any number of pairs.</summary>
/// <remarks>
/// t has noncentrality d_z √n and n − 1 degrees of freedom; a two-sided test counts both tails.
/// Source: Cohen (1988), Statistical Power Analysis for the Behavioral Sciences, 2nd ed., ch. 2.
/// </remarks>
/// <param name="Exact">The number at which the power is just reached, not a whole number.</param>
/// <param name="Pairs">The next whole number.</param>
public sealed record PairsNeeded(double Exact, int Pairs)
{
    private const double MostPairs = 1e9;

    /// <summary>Power at a number of pairs.</summary>
    /// <param name="standardizedChange">True mean difference in standard deviations of the differences (d_z); for a one-sided test positive in the
    /// direction tested.</param>
    /// <param name="pairs">More than 1, may be a fraction.</param>
    /// <param name="alpha">Level of the test.</param>
    /// <param name="isTwoSided">Whether both directions count.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static double Power(double standardizedChange, double pairs, double alpha = 0.05, bool isTwoSided = true)
    {
        if (!double.IsFinite(standardizedChange) || !(pairs > 1 && pairs <= MostPairs) || !(alpha > 0 && alpha < 1))
            throw new ArgumentException($"Needs a finite change, more than 1 pair and a level between 0 and 1; got {standardizedChange}, {pairs}, {alpha}.");
        var (df, ncp) = (pairs - 1, standardizedChange * Math.Sqrt(pairs));
        if (!isTwoSided)
            return NoncentralT.UpperTail(StudentT.Quantile(1 - alpha, df), df, ncp);
        var critical = StudentT.Quantile(1 - (alpha / 2), df);
        return Math.Min(1, NoncentralT.UpperTail(critical, df, ncp) + NoncentralT.Cdf(-critical, df, ncp));
    }

    /// <summary>Pairs needed.</summary>
    /// <param name="standardizedChange">d_z, not zero; positive for a one-sided test.</param>
    /// <param name="power">Power wanted, between <paramref name="alpha"/> and 1.</param>
    /// <param name="alpha">Level of the test.</param>
    /// <param name="isTwoSided">Whether both directions count.</param>
    /// <returns>At least 2 pairs; null when more than a thousand million would be needed.</returns>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static PairsNeeded? For(double standardizedChange, double power, double alpha = 0.05, bool isTwoSided = true)
    {
        if (!(power > alpha && power < 1))
            throw new ArgumentException($"The power lies between alpha and 1; got {power} at {alpha}.", nameof(power));
        if (!(isTwoSided ? Math.Abs(standardizedChange) > 0 : standardizedChange > 0))
            throw new ArgumentException($"No number of pairs shows a change of {standardizedChange} in the direction tested.", nameof(standardizedChange));
        double Shortfall(double pairs) => Power(standardizedChange, pairs, alpha, isTwoSided) - power;
        const double least = 2;
        if (Shortfall(least) >= 0)
            return new PairsNeeded(least, 2);
        var high = 2 * least;
        while (Shortfall(high) < 0)
        {
            high *= 2;
            if (high > MostPairs)
                return null;
        }

        var exact = BracketedRoot.Solve(Shortfall, high / 2, high);
        return new PairsNeeded(exact, (int)Math.Ceiling(exact - 1e-9));
    }
}
