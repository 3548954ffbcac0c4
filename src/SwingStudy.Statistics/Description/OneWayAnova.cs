using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Description;

/// <summary>A one-way analysis of variance.</summary>
/// <param name="GrandMean">Mean of all values.</param>
/// <param name="BetweenDegreesOfFreedom">Groups − 1.</param>
/// <param name="WithinDegreesOfFreedom">Values − groups.</param>
/// <param name="BetweenSumOfSquares">Σ n_i (m_i − m)².</param>
/// <param name="WithinSumOfSquares">Σ Σ (y_ij − m_i)².</param>
public sealed record OneWayAnova(
    double GrandMean,
    int BetweenDegreesOfFreedom,
    int WithinDegreesOfFreedom,
    double BetweenSumOfSquares,
    double WithinSumOfSquares)
{
    /// <summary>Mean square between groups; null with one group.</summary>
    public double? BetweenMeanSquare => BetweenDegreesOfFreedom > 0 ? BetweenSumOfSquares / BetweenDegreesOfFreedom : null;

    /// <summary>Mean square within groups; null when no group has a second value.</summary>
    public double? WithinMeanSquare => WithinDegreesOfFreedom > 0 ? WithinSumOfSquares / WithinDegreesOfFreedom : null;

    /// <summary>Between over within mean square; null when either is missing or nothing varies within.</summary>
    public double? F => BetweenMeanSquare is { } between && WithinMeanSquare is > 0 and { } within ? between / within : null;

    /// <summary>P(F or larger) with equal group means.</summary>
    public double? P => F is { } f ? FisherF.UpperTail(f, BetweenDegreesOfFreedom, WithinDegreesOfFreedom) : null;

    /// <summary>Share of the total sum of squares that lies between groups; null when nothing varies.</summary>
    public double? RSquared =>
        BetweenSumOfSquares + WithinSumOfSquares is > 0 and var total ? BetweenSumOfSquares / total : null;

    /// <summary>The analysis of values in groups. Sums keep their digits whatever the offset of the values.</summary>
    /// <remarks>Source: Searle (1971), Linear Models, ch. 3; certified values: NIST StRD analysis of variance.</remarks>
    /// <param name="values">All values, all finite.</param>
    /// <param name="groups">0-based group of each value, as long as <paramref name="values"/>.</param>
    /// <returns>The analysis, or null without values.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a group is negative or a value is not finite.</exception>
    public static OneWayAnova? Of(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        if (values.Length != groups.Length)
            throw new ArgumentException($"{values.Length} values but {groups.Length} group numbers.", nameof(groups));
        if (values.IsEmpty)
            return null;
        Finite.Require(values, nameof(values));
        var origin = values[0];
        var (counts, means) = GroupMeans(values, groups, origin);
        var grand = new CompensatedSum();
        foreach (var x in values)
            grand.Add((x - origin) / values.Length);
        var between = new CompensatedSum();
        var used = 0;
        for (var g = 0; g < counts.Length; g++)
        {
            if (counts[g] == 0)
                continue;
            used++;
            var deviation = means[g] - grand.Value;
            between.Add(counts[g] * deviation * deviation);
        }

        var within = new CompensatedSum();
        for (var i = 0; i < values.Length; i++)
        {
            var deviation = values[i] - origin - means[groups[i]];
            within.Add(deviation * deviation);
        }

        return new OneWayAnova(origin + grand.Value, used - 1, values.Length - used, between.Value, within.Value);
    }

    /// <summary>Means as differences from <paramref name="origin"/>, which costs no digits when values are near each other.</summary>
    private static (int[] Counts, double[] Means) GroupMeans(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, double origin)
    {
        var size = 0;
        foreach (var g in groups)
        {
            if (g < 0)
                throw new ArgumentException("A group number is 0 or more.", nameof(groups));
            size = Math.Max(size, g + 1);
        }

        var counts = new int[size];
        var sums = new CompensatedSum[size];
        for (var i = 0; i < values.Length; i++)
        {
            counts[groups[i]]++;
            sums[groups[i]].Add(values[i] - origin);
        }

        var means = new double[size];
        for (var g = 0; g < size; g++)
            means[g] = counts[g] > 0 ? sums[g].Value / counts[g] : 0;
        return (counts, means);
    }
}
