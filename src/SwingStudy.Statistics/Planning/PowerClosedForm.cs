using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Planning;

/// <summary>Power of two-sided t tests by the noncentral t distribution.</summary>
/// <remarks>Both tails count. Source: Cohen (1988), Statistical Power Analysis for the Behavioral Sciences, 2nd ed., ch. 2.</remarks>
public static class PowerClosedForm
{
    /// <summary>Power of the paired t test.</summary>
    /// <param name="standardizedChange">True mean difference in standard deviations of the differences (d_z).</param>
    /// <param name="pairs">Number of pairs, at least 2.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static double PairedT(double standardizedChange, int pairs, double alpha = 0.05)
    {
        RequireAtLeast(pairs, 2, nameof(pairs));
        return Power(standardizedChange * Math.Sqrt(pairs), pairs - 1, alpha);
    }

    /// <summary>Power of the pooled two-sample t test.</summary>
    /// <param name="standardizedDifference">True difference of means in common standard deviations.</param>
    /// <param name="first">Size of the first group, at least 1.</param>
    /// <param name="second">Size of the second group, at least 1, three in all.</param>
    /// <param name="alpha">Two-sided level.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static double TwoSampleT(double standardizedDifference, int first, int second, double alpha = 0.05)
    {
        RequireAtLeast(Math.Min(first, second), 1, nameof(first));
        RequireAtLeast(first + second, 3, nameof(second));
        return Power(standardizedDifference / Math.Sqrt((1.0 / first) + (1.0 / second)), first + second - 2, alpha);
    }

    /// <summary>Power of a two-sided t test with a given noncentrality.</summary>
    internal static double Power(double noncentrality, double df, double alpha)
    {
        Finite.Require([noncentrality], nameof(noncentrality));
        Finite.RequireConfidence(1 - alpha);
        var critical = StudentT.Critical(1 - alpha, df);
        return Math.Clamp(NoncentralT.UpperTail(critical, df, noncentrality) + NoncentralT.Cdf(-critical, df, noncentrality), 0, 1);
    }

    internal static void RequireAtLeast(int number, int least, string name)
    {
        if (number < least)
            throw new ArgumentException($"At least {least} is needed; got {number}.", name);
    }
}
