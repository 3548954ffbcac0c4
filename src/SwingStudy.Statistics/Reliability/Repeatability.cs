using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Reliability;

/// <summary>How far two readings of the same thing may lie apart, from pairs of repeated readings.</summary>
/// <remarks>
/// Sources: Bland and Altman (1986), Lancet 327:307–310 (2 SD of the differences); Bland and Altman (1999), Stat Methods Med Res 8:135–160
/// (1.96 √2 s_w with s_w from differences about zero).
/// </remarks>
/// <param name="Count">Number of pairs.</param>
/// <param name="MeanDifference">Mean of first − second.</param>
/// <param name="StandardDeviationOfDifferences">Divisor n − 1; null with one pair.</param>
/// <param name="WithinSubject">s_w = √(mean(d²)/2): a shift between the readings counts as error.</param>
/// <param name="LogPercent">100 (e^{s_w of ln values} − 1); null unless all values are positive.</param>
public sealed record Repeatability(
    int Count, double MeanDifference, double? StandardDeviationOfDifferences, double WithinSubject, double? LogPercent)
{
    /// <summary>SD of the differences / √2: a shift between the readings does not count.</summary>
    public double? WithinSubjectBiasRemoved => StandardDeviationOfDifferences / Math.Sqrt(2);

    /// <summary>2 · SD of the differences.</summary>
    public double? TwoStandardDeviations => 2 * StandardDeviationOfDifferences;

    /// <summary>2 · root mean square of the differences.</summary>
    public double TwoRootMeanSquares => 2 * Math.Sqrt(2) * WithinSubject;

    /// <summary>z √2 s_w: the repeatability coefficient, z = 1.96 at 0.95.</summary>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public double Coefficient(double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        return Normal.Critical(confidence) * Math.Sqrt(2) * WithinSubject;
    }

    /// <summary>Analyses pairs of readings.</summary>
    /// <returns>The coefficient and its parts, or null without pairs.</returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static Repeatability? Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        Finite.Require(first, nameof(first));
        Finite.Require(second, nameof(second));
        if (first.Length != second.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {first.Length} and {second.Length}.", nameof(second));
        if (first.IsEmpty)
            return null;
        var n = first.Length;
        var (differences, ratios) = (new double[n], new double[n]);
        var positive = true;
        for (var i = 0; i < n; i++)
        {
            differences[i] = first[i] - second[i];
            positive &= first[i] > 0 && second[i] > 0;
            ratios[i] = positive ? Math.Log(first[i] / second[i]) : 0;
        }

        var summary = Summary.OfChecked(differences);
        return new Repeatability(
            n,
            summary.Mean!.Value,
            summary.StandardDeviation,
            RootMeanSquare(differences) / Math.Sqrt(2),
            positive ? 100 * (Math.Exp(RootMeanSquare(ratios) / Math.Sqrt(2)) - 1) : null);
    }

    private static double RootMeanSquare(double[] values)
    {
        var sum = new CompensatedSum();
        foreach (var x in values)
            sum.Add(x * x / values.Length);
        return Math.Sqrt(sum.Value);
    }
}
