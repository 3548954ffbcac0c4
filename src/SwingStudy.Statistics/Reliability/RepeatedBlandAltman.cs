using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>Limits of agreement when each subject has several pairs of readings.</summary>
/// <remarks>
/// Constant true value within a subject: var(subject mean differences) + (1 − mean(1/m)) s_x² + (1 − mean(1/m)) s_y², with the within-subject
/// variances of each source (1999, sec. 5.2). Varying true value: one-way ANOVA of the differences, s² = s_between² + MSW with
/// s_between² = (MSB − MSW)/m₀, m₀ = ((Σm)² − Σm²)/((n − 1) Σm) (2007, sec. 3); a negative s_between² is cut at zero.
/// Sources: Bland and Altman (1999), Stat Methods Med Res 8:135–160; (2007), J Biopharm Stat 17:571–582.
/// </remarks>
/// <param name="Subjects">Number of subjects.</param>
/// <param name="Pairs">Number of pairs.</param>
/// <param name="WithinVarianceFirst">Within-subject variance of the first source.</param>
/// <param name="WithinVarianceSecond">Within-subject variance of the second source.</param>
/// <param name="BiasOfSubjectMeans">Mean over subjects of their mean difference.</param>
/// <param name="VarianceOfSubjectMeans">Variance over subjects of their mean difference.</param>
/// <param name="MeanInverseCount">Mean over subjects of 1/m.</param>
/// <param name="BiasOfAllPairs">Mean of all differences.</param>
/// <param name="BetweenMeanSquare">MSB of the differences.</param>
/// <param name="WithinMeanSquare">MSW of the differences.</param>
/// <param name="EffectiveCount">m₀.</param>
public sealed record RepeatedBlandAltman(
    int Subjects,
    int Pairs,
    double WithinVarianceFirst,
    double WithinVarianceSecond,
    double BiasOfSubjectMeans,
    double VarianceOfSubjectMeans,
    double MeanInverseCount,
    double BiasOfAllPairs,
    double BetweenMeanSquare,
    double WithinMeanSquare,
    double EffectiveCount)
{
    /// <summary>(MSB − MSW)/m₀, not cut at zero.</summary>
    public double BetweenVariance => (BetweenMeanSquare - WithinMeanSquare) / EffectiveCount;

    /// <summary>SD of a difference of single readings when the true value stays the same within a subject.</summary>
    public double StandardDeviationConstantTrue =>
        Math.Sqrt(VarianceOfSubjectMeans + ((1 - MeanInverseCount) * (WithinVarianceFirst + WithinVarianceSecond)));

    /// <summary>SD of a difference of single readings when the true value changes from pair to pair.</summary>
    public double StandardDeviationVaryingTrue => Math.Sqrt(Math.Max(0, BetweenVariance) + WithinMeanSquare);

    /// <summary>Bias of subject means ∓ z SD, constant true value.</summary>
    public Interval LimitsConstantTrue(double coverage = 0.95) => Limits.Normal(BiasOfSubjectMeans, StandardDeviationConstantTrue, coverage);

    /// <summary>Bias of all pairs ∓ z SD, varying true value.</summary>
    public Interval LimitsVaryingTrue(double coverage = 0.95) => Limits.Normal(BiasOfAllPairs, StandardDeviationVaryingTrue, coverage);

    /// <summary>Analyses pairs of readings of several subjects.</summary>
    /// <param name="first">The first source.</param>
    /// <param name="second">The second source, same length and order.</param>
    /// <param name="subjects">0-based subject of each pair.</param>
    /// <returns>The analysis, or null with fewer than two subjects or no subject with two pairs.</returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static RepeatedBlandAltman? Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadOnlySpan<int> subjects)
    {
        Finite.Require(first, nameof(first));
        Finite.Require(second, nameof(second));
        if (first.Length != second.Length || first.Length != subjects.Length)
            throw new ArgumentException($"Columns need equal lengths; got {first.Length}, {second.Length} and {subjects.Length}.", nameof(second));
        var differences = new double[first.Length];
        for (var i = 0; i < differences.Length; i++)
            differences[i] = first[i] - second[i];
        if (OneWayAnova.Of(first, subjects) is not { WithinMeanSquare: { } vx, BetweenDegreesOfFreedom: > 0 }
            || OneWayAnova.Of(second, subjects)?.WithinMeanSquare is not { } vy
            || OneWayAnova.Of(differences, subjects) is not { BetweenMeanSquare: { } between, WithinMeanSquare: { } within } anova)
            return null;
        var bySubject = GroupBy(differences, subjects);
        var means = Summary.OfChecked(bySubject.ConvertAll(d => Summary.OfChecked([.. d]).Mean!.Value).ToArray());
        double total = differences.Length;
        var squares = bySubject.Sum(d => (double)d.Count * d.Count);
        var n = bySubject.Count;
        return new RepeatedBlandAltman(
            n,
            differences.Length,
            vx,
            vy,
            means.Mean!.Value,
            means.Variance!.Value,
            bySubject.Average(d => 1.0 / d.Count),
            anova.GrandMean,
            between,
            within,
            ((total * total) - squares) / ((n - 1) * total));
    }

    private static List<List<double>> GroupBy(double[] values, ReadOnlySpan<int> groups)
    {
        var grouped = new SortedDictionary<int, List<double>>();
        for (var i = 0; i < values.Length; i++)
        {
            if (!grouped.TryGetValue(groups[i], out var list))
                grouped[groups[i]] = list = [];
            list.Add(values[i]);
        }

        return [.. grouped.Values];
    }
}
