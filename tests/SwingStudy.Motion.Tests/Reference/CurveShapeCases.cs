using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Reference;

internal static class CurveShapeCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("finite differences", c => c.Expects("velocity_central_edge2"), Differences),
        new("moving polynomial", c => c.Has("polyorder"), Polynomials),
        new("interpolation", c => c.Has("n_out"), Interpolations),
        new("lag between signals", c => c.Expects("best_lag_samples"), Lags),
        new("spikes", c => c.Has("half_window"), Spiked),
        new("peaks", c => c.Expects("prominences"), Peaks),
    ];

    private static Dictionary<string, object?> Differences(ReferenceCase c)
    {
        var (x, fs) = (c.Numbers("x"), c.Number("fs"));
        return new()
        {
            ["velocity_central_edge2"] = Difference.Central(x, fs),
            ["velocity_central_edge1"] = Difference.CentralPlainEnds(x, fs),
            ["acceleration_central_interior"] = Difference.Second(x, fs),
            ["velocity_5point_interior"] = Difference.FivePoint(x, fs),
        };
    }

    private static Dictionary<string, object?> Polynomials(ReferenceCase c)
    {
        var (x, fs, window, degree) = (c.Numbers("x"), c.Number("fs"), c.Integer("window"), c.Integer("polyorder"));
        return new()
        {
            ["coeffs_smooth"] = LocalPolynomial.Weights(window, degree, 0),
            ["coeffs_deriv1"] = LocalPolynomial.Weights(window, degree, 1).Select(w => w * fs).ToArray(),
            ["smooth_interp"] = LocalPolynomial.Smooth(x, fs, window, degree),
            ["deriv1_interp"] = LocalPolynomial.Smooth(x, fs, window, degree, 1),
            ["deriv2_interp"] = LocalPolynomial.Smooth(x, fs, window, degree, 2),
            ["smooth_mirror"] = LocalPolynomial.Smooth(x, fs, window, degree, 0, EndRule.Mirror),
            ["smooth_nearest"] = LocalPolynomial.Smooth(x, fs, window, degree, 0, EndRule.Nearest),
        };
    }

    private static Dictionary<string, object?> Interpolations(ReferenceCase c)
    {
        var (t, x, count) = (c.Numbers("t"), c.Numbers("x"), c.Integer("n_out"));
        double[] times = [.. Enumerable.Range(0, count).Select(i => t[0] + ((t[^1] - t[0]) * i / (count - 1)))];
        var (natural, notAKnot, shape) = (PiecewiseCubic.Natural(t, x), PiecewiseCubic.NotAKnot(t, x), PiecewiseCubic.ShapePreserving(t, x));
        return new()
        {
            ["t_out"] = times,
            ["linear"] = times.Select(time => Straight.At(t, x, time)).ToArray(),
            ["cubic_not_a_knot"] = times.Select(notAKnot.At).ToArray(),
            ["cubic_natural"] = times.Select(natural.At).ToArray(),
            ["pchip"] = times.Select(shape.At).ToArray(),
            ["cubic_natural_deriv1"] = times.Select(natural.SlopeAt).ToArray(),
            ["cubic_not_a_knot_deriv1"] = times.Select(notAKnot.SlopeAt).ToArray(),
        };
    }

    private static Dictionary<string, object?> Lags(ReferenceCase c)
    {
        var (x, y) = (c.Numbers("x"), c.Numbers("y"));
        int[] lags = [.. c.Expected.GetProperty("lags_window").EnumerateArray().Select(lag => lag.GetInt32())];
        var search = LagSearch.Between(x, y, lags[^1]);
        var correlations = LagSearch.Correlations(x, y, lags[^1]);
        return new()
        {
            ["best_lag_samples"] = search.Lag,
            ["best_lag_s"] = search.Lag / c.Number("fs"),
            ["r_at_best"] = search.Correlation,
            ["subsample_offset"] = search.Offset,
            ["best_lag_subsample"] = search.FineLag,
            ["r_peak_parabolic"] = search.PeakCorrelation,
            ["lags_window"] = lags,
            ["r_window"] = lags.Select(lag => correlations[lag + lags[^1]]).ToArray(),
            ["r_lag0"] = correlations[lags[^1]],
        };
    }

    private static Dictionary<string, object?> Spiked(ReferenceCase c)
    {
        var x = c.Numbers("x");
        var spikes = Spikes.Of(x, c.Integer("half_window"), c.Number("n_sigma"));
        var (median, scale) = Spikes.Middle(x);
        var z = Spikes.ModifiedZ(x);
        return new()
        {
            ["filtered"] = spikes.Filtered,
            ["flagged_indices_0based"] = spikes.Indices,
            ["local_median"] = spikes.LocalMedian,
            ["local_scaled_mad"] = spikes.LocalScale,
            ["global_median"] = median,
            ["global_mad"] = scale / 1.4826,
            ["modified_z"] = z,
            ["global_outliers_3_5_0based"] = Enumerable.Range(0, z.Length).Where(i => Math.Abs(z[i]) > 3.5).ToArray(),
        };
    }

    private static Dictionary<string, object?> Peaks(ReferenceCase c)
    {
        var (x, fs) = (c.Numbers("x"), c.Number("fs"));
        var (highest, lowest) = (Peak.Highest(x)!.Value, Peak.Lowest(x, 0, x.Length - 1)!.Value);
        var prominent = ProminentPeak.In(x, 0.1);
        return new()
        {
            ["max_index"] = highest.Index,
            ["max_value"] = highest.Sample,
            ["offset"] = highest.Offset,
            ["peak_time"] = highest.Position / fs,
            ["peak_value"] = highest.Value,
            ["min_index"] = lowest.Index,
            ["min_value"] = lowest.Sample,
            ["find_peaks_prominence_0_1"] = prominent.Select(p => p.Index).ToArray(),
            ["prominences"] = prominent.Select(p => p.Prominence).ToArray(),
        };
    }
}
