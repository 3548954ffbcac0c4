namespace SwingStudy.Motion.Signals;

/// <summary>A line through points by least squares.</summary>
/// <param name="Slope">Rise per unit of x.</param>
/// <param name="Intercept">Value at x = 0.</param>
/// <param name="RSquared">Share of the scatter of y that the line explains; NaN when y does not vary.</param>
public readonly record struct StraightLine(double Slope, double Intercept, double RSquared)
{
    /// <summary>The line with the least sum of squared distances in y.</summary>
    /// <param name="x">At least two different values, all finite.</param>
    /// <param name="y">As many.</param>
    public static StraightLine Through(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double meanX = 0, meanY = 0;
        for (var i = 0; i < x.Length; i++)
            (meanX, meanY) = (meanX + (x[i] / x.Length), meanY + (y[i] / x.Length));
        double xx = 0, xy = 0, yy = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var (dx, dy) = (x[i] - meanX, y[i] - meanY);
            (xx, xy, yy) = (xx + (dx * dx), xy + (dx * dy), yy + (dy * dy));
        }

        var slope = xy / xx;
        return new StraightLine(slope, meanY - (slope * meanX), yy > 0 ? xy * xy / (xx * yy) : double.NaN);
    }
}
