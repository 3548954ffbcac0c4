namespace SwingStudy.Statistics.Resampling;

/// <summary>Pearson's correlation of two columns.</summary>
/// <param name="x">First column, all finite.</param>
/// <param name="y">Second column, as long, all finite.</param>
public sealed class CorrelationStatistic(double[] x, double[] y) : RowStatistic
{
    /// <inheritdoc/>
    public override int Rows => Math.Min(x.Length, y.Length);

    /// <inheritdoc/>
    public override double Of(ReadOnlySpan<int> rows)
    {
        double meanX = 0, meanY = 0;
        foreach (var row in rows)
        {
            meanX += x[row] / rows.Length;
            meanY += y[row] / rows.Length;
        }

        double xx = 0, yy = 0, xy = 0;
        foreach (var row in rows)
        {
            double dx = x[row] - meanX, dy = y[row] - meanY;
            xx += dx * dx;
            yy += dy * dy;
            xy += dx * dy;
        }

        return xx > 0 && yy > 0 ? Math.Clamp(xy / (Math.Sqrt(xx) * Math.Sqrt(yy)), -1, 1) : double.NaN;
    }

    /// <inheritdoc/>
    public override RowStatistic Copy() => this;
}
