using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Paired values reduced to what every effect size of their change needs. Positive means that values rose.</summary>
/// <param name="Count">Number of pairs.</param>
/// <param name="MeanBefore">Mean of the first condition.</param>
/// <param name="MeanAfter">Mean of the second condition.</param>
/// <param name="Difference">Mean of after − before.</param>
/// <param name="StandardDeviationBefore">Divisor n − 1; null with one pair or when not known.</param>
/// <param name="StandardDeviationAfter">Divisor n − 1; null with one pair or when not known.</param>
/// <param name="StandardDeviationOfDifferences">Divisor n − 1; null with one pair.</param>
/// <param name="Correlation">Pearson's r of before and after; null when either never varies.</param>
public sealed record PairedContrast(
    int Count,
    double MeanBefore,
    double MeanAfter,
    double Difference,
    double? StandardDeviationBefore,
    double? StandardDeviationAfter,
    double? StandardDeviationOfDifferences,
    double? Correlation)
{
    /// <summary>n − 1.</summary>
    public int DegreesOfFreedom => Count - 1;

    /// <summary>Difference over its standard error; null when the differences never vary.</summary>
    public double? T => StandardDeviationOfDifferences is > 0 and var s ? Difference / (s / Math.Sqrt(Count)) : null;

    /// <summary>Two-sided p of <see cref="T"/>.</summary>
    public double? P => T is { } t ? StudentT.TwoSided(t, DegreesOfFreedom) : null;

    /// <summary>Reduces pairs: place i of both spans is one pair.</summary>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static PairedContrast Of(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        if (before.Length != after.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {before.Length} before and {after.Length} after.", nameof(after));
        var (one, two) = (Summary.Of(before), Summary.Of(after));
        var differences = new double[before.Length];
        for (var i = 0; i < differences.Length; i++)
            differences[i] = after[i] - before[i];
        var change = Summary.OfChecked(differences);
        return new PairedContrast(
            before.Length,
            one.Mean ?? 0,
            two.Mean ?? 0,
            change.Mean ?? 0,
            one.StandardDeviation,
            two.StandardDeviation,
            change.StandardDeviation,
            Description.Correlation.Pearson(before, after));
    }

    /// <summary>Pairs known from print by the standard deviation of the differences and the correlation.</summary>
    /// <exception cref="ArgumentException">There is no pair, or a number is out of range.</exception>
    public static PairedContrast FromMoments(int count, double meanBefore, double meanAfter, double standardDeviationOfDifferences, double correlation)
    {
        if (count < 1 || !(standardDeviationOfDifferences >= 0) || !(correlation >= -1 && correlation <= 1))
            throw new ArgumentException($"Got n = {count}, SD of differences {standardDeviationOfDifferences}, r = {correlation}.");
        return new PairedContrast(
            count, meanBefore, meanAfter, meanAfter - meanBefore, null, null, standardDeviationOfDifferences, correlation);
    }

    /// <summary>Why the change cannot be judged, or null when it can.</summary>
    internal string? Lacks(int atLeast) => Count < atLeast ? $"needs at least {atLeast} pairs, got {Count}" : null;
}
