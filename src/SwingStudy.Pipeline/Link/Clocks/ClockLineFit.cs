using SwingStudy.Statistics.SingleCase;

namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>A clock's line fitted to pairs of readings so that single late triggers and wrong pairs do not move it.</summary>
/// <remarks>
/// The slope starts at the median of pairwise slopes (Theil-Sen, of at most <see cref="StartPairs"/> pairs) and is refined with the line by weighted least squares,
/// weights being Tukey's biweight at 4.685 spreads over the variance of the pair; the spread is 1.4826 times the median residual, and a time cut to a
/// width w adds w²/12. A drift that is known from elsewhere, with its scatter, weighs as much as pairs of that certainty would. Where most times are cut, each pair bounds the offset to an interval, and the offset is the middle of the interval that most pairs agree on.
/// Sources: Sen (1968), JASA 63:1379–1389; Beaton and Tukey (1974), Technometrics 16:147–185 (the constant for 95 % efficiency: from memory).
/// </remarks>
/// <param name="Line">The line, anchored in the middle of the pairs.</param>
/// <param name="SpreadSeconds">Robust standard deviation of residuals.</param>
/// <param name="HasDrift">Whether the drift is known well enough; else it is taken as zero.</param>
/// <param name="DriftError">Standard error of the drift; infinite where it is taken as zero.</param>
internal sealed record ClockLineFit(ClockLine Line, double SpreadSeconds, bool HasDrift, double DriftError)
{
    private const int StartPairs = 101;
    private const int Rounds = 12;
    private const double Biweight = 4.685;

    /// <summary>Times are kept in milliseconds: no spread is known better than half of one.</summary>
    private const double LeastSpread = 0.0005;

    /// <summary>What a few pairs that happen to lie on a line are not believed to be better than.</summary>
    private const double BelievedSpread = 0.003;

    /// <summary>Fits the line.</summary>
    /// <param name="reference">Readings of the reference clock.</param>
    /// <param name="device">Readings of the device's own clock.</param>
    /// <param name="pairs">At least one pair of them.</param>
    /// <param name="limits">What is plausible.</param>
    public static ClockLineFit Of(ReadOnlySpan<ClockReading> reference, ReadOnlySpan<ClockReading> device, IReadOnlyList<ClockPair> pairs, ClockLimits limits)
    {
        var points = new FitPoint[pairs.Count];
        var anchor = 0.0;
        foreach (var pair in pairs)
            anchor += device[pair.Device].Middle / pairs.Count;
        for (var i = 0; i < points.Length; i++)
            points[i] = FitPoint.Of(reference[pairs[i].Reference], device[pairs[i].Device], anchor);
        Fit? withDrift = limits.Expected is { } expected ? Fitted(points, limits, expected.Drift)
            : pairs.Count > 2 ? Fitted(points, limits, StartSlope(points, limits))
            : null;
        var fit = withDrift is { } good && good.DriftError <= limits.LargestDriftError ? good : Fitted(points, limits, null);
        var offset = points.Count(point => point.HalfWidth > 0) * 2 > points.Length ? Agreed(points, fit.Offset, fit.Slope) : fit.Offset;
        return new ClockLineFit(new ClockLine(offset, fit.Slope, anchor), fit.Spread, fit.HasSlope, fit.DriftError);
    }

    private static double StartSlope(FitPoint[] points, ClockLimits limits)
    {
        var step = (points.Length + StartPairs - 1) / StartPairs;
        var some = points.Where((_, i) => i % step == 0).ToArray();
        var line = TheilSenLine.Fit([.. some.Select(point => point.Elapsed)], [.. some.Select(point => point.Difference)]);
        return Math.Clamp(line.Slope.Value ?? 0, -limits.MostDrift, limits.MostDrift);
    }

    private static Fit Fitted(FitPoint[] points, ClockLimits limits, double? startSlope)
    {
        var slope = startSlope ?? 0;
        var (known, certainty) = limits.Expected is { } expected ? (expected.Drift, 1 / (expected.Scatter * expected.Scatter)) : (0, 0);
        var offset = Median([.. points.Select(point => point.Difference - (slope * point.Elapsed))]);
        var (spread, error) = (LeastSpread, double.PositiveInfinity);
        for (var round = 0; round < Rounds; round++)
        {
            spread = Math.Max(LeastSpread, 1.4826 * Median([.. points.Select(point => Math.Abs(point.Residual(offset, slope)))]));
            var (sum, sumX, sumY, sumXX, sumXY, sumBelieved) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
            foreach (var point in points)
            {
                var variance = (spread * spread) + point.Variance;
                var z = (point.Difference - offset - (slope * point.Elapsed)) / Math.Sqrt(variance) / Biweight;
                var tukey = Math.Abs(z) < 1 ? (1 - (z * z)) * (1 - (z * z)) : 0;
                var weight = tukey / variance;
                sum += weight;
                sumX += weight * point.Elapsed;
                sumY += weight * point.Difference;
                sumXX += weight * point.Elapsed * point.Elapsed;
                sumXY += weight * point.Elapsed * point.Difference;
                sumBelieved += tukey / (Math.Max(variance, BelievedSpread * BelievedSpread));
            }

            var scatter = sumXX - (sumX * sumX / sum);
            if (startSlope is not null && (scatter > 0 || certainty > 0))
            {
                // The pairs' own information on the slope, and that from elsewhere.
                var believed = sumBelieved / sum;
                slope = ((believed * (sumXY - (sumX * sumY / sum))) + (certainty * known)) / ((believed * scatter) + certainty);
                slope = Math.Clamp(slope, -limits.MostDrift, limits.MostDrift);
                error = 1 / Math.Sqrt((believed * scatter) + certainty);
            }

            offset = (sumY - (slope * sumX)) / sum;
        }

        return new Fit(offset, slope, spread, startSlope is not null, error);
    }

    /// <summary>The middle of the offsets that satisfy the most pairs; of several such spans the one nearest to the fitted offset.</summary>
    private static double Agreed(FitPoint[] points, double fitted, double slope)
    {
        var bounds = new List<(double At, int Step)>(2 * points.Length);
        foreach (var point in points)
        {
            var middle = point.Difference - (slope * point.Elapsed);
            bounds.Add((middle - point.HalfWidth, 1));
            bounds.Add((middle + point.HalfWidth, -1));
        }

        // At one place spans open before others close.
        bounds.Sort((one, other) => one.At != other.At ? one.At.CompareTo(other.At) : other.Step.CompareTo(one.Step));
        var (depth, deepest, agreed) = (0, 0, fitted);
        for (var i = 0; i + 1 < bounds.Count; i++)
        {
            depth += bounds[i].Step;
            var middle = (bounds[i].At + bounds[i + 1].At) / 2;
            if (depth > deepest || (depth == deepest && Math.Abs(middle - fitted) < Math.Abs(agreed - fitted)))
                (deepest, agreed) = (depth, middle);
        }

        return agreed;
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }

    private readonly record struct Fit(double Offset, double Slope, double Spread, bool HasSlope, double DriftError);

    /// <summary>One pair: device time from the anchor, reference minus device time, and how far cut times leave that open.</summary>
    private readonly record struct FitPoint(double Elapsed, double Difference, double HalfWidth, double Variance)
    {
        public static FitPoint Of(ClockReading reference, ClockReading device, double anchor) => new(
            device.Middle - anchor,
            reference.Middle - device.Middle,
            (reference.Width + device.Width) / 2,
            ((reference.Width * reference.Width) + (device.Width * device.Width)) / 12);

        /// <summary>What is left beyond the width.</summary>
        public double Residual(double offset, double slope)
        {
            var left = Difference - offset - (slope * Elapsed);
            return Math.Sign(left) * Math.Max(0, Math.Abs(left) - HalfWidth);
        }
    }
}
