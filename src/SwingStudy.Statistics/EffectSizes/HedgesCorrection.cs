using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>The factor J that takes the small-sample bias out of a standardized mean difference.</summary>
/// <remarks>Source: Hedges and Olkin (1985), Statistical Methods for Meta-Analysis, ch. 5.</remarks>
public static class HedgesCorrection
{
    /// <summary>J(ν) = Γ(ν/2) / (√(ν/2) Γ((ν − 1)/2)), exact.</summary>
    /// <param name="df">Degrees of freedom ν of the standard deviation, more than 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">df is not more than 1.</exception>
    public static double Exact(double df)
    {
        if (!(df > 1))
            throw new ArgumentOutOfRangeException(nameof(df), df, "The correction exists only for more than 1 degree of freedom.");
        if (double.IsPositiveInfinity(df))
            return 1;

        // With a = (ν − 1)/2: Γ(a + ½)/Γ(a), each by Stirling's formula and what it misses; no large logarithms cancel.
        var a = (df - 1) / 2;
        var b = a + 0.5;
        var ratio = Deviance.StirlingError(b) - Deviance.StirlingError(a) - Deviance.Of(a, b);
        return Math.Exp(ratio) * Math.Sqrt(a / b);
    }

    /// <summary>J(ν) ≈ 1 − 3/(4ν − 1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">df is not more than 1.</exception>
    public static double Approximate(double df)
    {
        if (!(df > 1))
            throw new ArgumentOutOfRangeException(nameof(df), df, "The correction exists only for more than 1 degree of freedom.");
        return 1 - (3 / ((4 * df) - 1));
    }
}
