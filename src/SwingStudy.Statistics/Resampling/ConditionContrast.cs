namespace SwingStudy.Statistics.Resampling;

/// <summary>Computes one <see cref="ConditionStatistic"/> again and again without allocation. Not for use by two threads at once.</summary>
internal sealed class ConditionContrast(double[] values, ConditionStatistic statistic)
{
    private readonly double[] _a = new double[values.Length];
    private readonly double[] _b = new double[values.Length];

    /// <summary>The statistic of B against A; both conditions need an occasion.</summary>
    public double Of(ReadOnlySpan<bool> assignment)
    {
        double sumA = 0, sumB = 0;
        int a = 0, b = 0;
        for (var i = 0; i < assignment.Length; i++)
        {
            if (assignment[i])
            {
                sumB += values[i];
                _b[b++] = values[i];
            }
            else
            {
                sumA += values[i];
                _a[a++] = values[i];
            }
        }

        return statistic == ConditionStatistic.MeanDifference
            ? (sumB / b) - (sumA / a)
            : Median(_b.AsSpan(0, b)) - Median(_a.AsSpan(0, a));
    }

    private static double Median(Span<double> values)
    {
        values.Sort();
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] / 2) + (values[middle] / 2);
    }
}
