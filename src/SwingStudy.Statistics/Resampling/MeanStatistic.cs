namespace SwingStudy.Statistics.Resampling;

/// <summary>The mean of the rows, or the mean divided by their standard deviation (divisor n − 1), as d_z of paired differences is.</summary>
/// <param name="values">One value a row, all finite.</param>
/// <param name="standardized">Whether the standard deviation divides.</param>
public sealed class MeanStatistic(double[] values, bool standardized = false) : RowStatistic
{
    /// <inheritdoc/>
    public override int Rows => values.Length;

    /// <inheritdoc/>
    public override double Of(ReadOnlySpan<int> rows)
    {
        if (rows.IsEmpty)
            return double.NaN;
        var origin = values[rows[0]];
        double sum = 0, squares = 0;
        foreach (var row in rows)
        {
            var deviation = values[row] - origin;
            sum += deviation;
            squares += deviation * deviation;
        }

        var shift = sum / rows.Length;
        if (!standardized)
            return origin + shift;
        var variance = (squares - (sum * shift)) / (rows.Length - 1);
        return variance > 0 ? (origin + shift) / Math.Sqrt(variance) : double.NaN;
    }

    /// <inheritdoc/>
    public override RowStatistic Copy() => this;
}
