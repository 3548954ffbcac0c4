namespace SwingStudy.Statistics.Resampling;

/// <summary>The median of the rows.</summary>
/// <param name="values">One value a row, all finite.</param>
public sealed class MedianStatistic(double[] values) : RowStatistic
{
    private double[] _chosen = new double[values.Length];

    /// <inheritdoc/>
    public override int Rows => values.Length;

    /// <inheritdoc/>
    public override double Of(ReadOnlySpan<int> rows)
    {
        if (rows.IsEmpty)
            return double.NaN;
        if (_chosen.Length < rows.Length)
            _chosen = new double[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            _chosen[i] = values[rows[i]];
        var sorted = _chosen.AsSpan(0, rows.Length);
        sorted.Sort();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] / 2) + (sorted[middle] / 2);
    }

    /// <inheritdoc/>
    public override RowStatistic Copy() => new MedianStatistic(values);
}
