using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>One p from the p values of independent players.</summary>
public static class CombinedP
{
    /// <summary>Edgington's additive method: the probability that independent uniform numbers sum to no more than the p values do.</summary>
    /// <remarks>
    /// Σⱼ (−1)ʲ C(n, j)(S − j)ⁿ/n! over j ≤ S. Conservative for p values of exact tests with few assignments.
    /// Source: Edgington (1972), Journal of Psychology 80:351–363.
    /// </remarks>
    /// <param name="values">One to 20 p values in [0, 1].</param>
    /// <exception cref="ArgumentException">A value is no probability, or there are none or more than 20.</exception>
    public static double Additive(ReadOnlySpan<double> values)
    {
        Finite.Require(values, nameof(values));
        if (values.IsEmpty || values.Length > 20 || values.ContainsAnyExceptInRange(0.0, 1.0))
            throw new ArgumentException($"Between one and 20 probabilities are needed; got {values.Length} values.", nameof(values));
        var sum = 0.0;
        foreach (var value in values)
            sum += value;

        // Beyond the middle the alternating sum cancels: the distribution is symmetric about n/2.
        var n = values.Length;
        return sum <= n / 2.0 ? Below(sum, n) : 1 - Below(n - sum, n);
    }

    private static double Below(double sum, int n)
    {
        var total = 0.0;
        for (var j = 0; j <= sum; j++)
            total += (j % 2 == 0 ? 1 : -1) * Choices.Binomial(n, j) * Math.Pow(sum - j, n);
        return Math.Clamp(total / Choices.Factorial(n), 0, 1);
    }
}
