using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>τ² and what belongs to it, for effects with known sampling variances.</summary>
internal static class Heterogeneity
{
    /// <summary>Weighted mean at τ², weights 1/(v + τ²), with Q = Σ w (y − mean)².</summary>
    public static (double Mean, double WeightSum, double Q) At(double tau2, ReadOnlySpan<double> y, ReadOnlySpan<double> v)
    {
        var (weights, weighted) = (new CompensatedSum(), new CompensatedSum());
        var origin = y[0];
        for (var i = 0; i < y.Length; i++)
        {
            weights.Add(1 / (v[i] + tau2));
            weighted.Add((y[i] - origin) / (v[i] + tau2));
        }

        var shift = weighted.Value / weights.Value;
        var q = new CompensatedSum();
        for (var i = 0; i < y.Length; i++)
            q.Add((y[i] - origin - shift) * (y[i] - origin - shift) / (v[i] + tau2));
        return (origin + shift, weights.Value, q.Value);
    }

    /// <summary>τ² by the estimator asked for.</summary>
    public static double TauSquared(HeterogeneityEstimator estimator, double[] y, double[] v) => estimator switch
    {
        HeterogeneityEstimator.DerSimonianLaird => DerSimonianLaird(y, v),
        HeterogeneityEstimator.PauleMandel => AtQ(y.Length - 1, y, v),
        HeterogeneityEstimator.Reml => Scoring(y, v, isRestricted: true),
        HeterogeneityEstimator.Ml => Scoring(y, v, isRestricted: false),
        _ => throw new ArgumentOutOfRangeException(nameof(estimator), estimator, "Not an estimator of heterogeneity."),
    };

    /// <summary>Interval of τ² by Q profiles: Q(τ²) follows χ² with k − 1 degrees of freedom at the true τ².</summary>
    /// <remarks>Source: Viechtbauer (2007), Statistics in Medicine 26:37–52.</remarks>
    public static Interval QProfile(double[] y, double[] v, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var df = y.Length - 1;
        return new Interval(AtQ(ChiSquare.Quantile(1 - tail, df), y, v), AtQ(ChiSquare.Quantile(tail, df), y, v), confidence);
    }

    /// <summary>The sampling variance that a typical effect has: (k − 1) Σw/((Σw)² − Σw²), w = 1/v.</summary>
    /// <remarks>Source: Higgins and Thompson (2002), Statistics in Medicine 21:1539–1558.</remarks>
    public static double TypicalVariance(ReadOnlySpan<double> v)
    {
        double sum = 0, squares = 0;
        foreach (var variance in v)
        {
            sum += 1 / variance;
            squares += 1 / variance / variance;
        }

        return (v.Length - 1) * sum / ((sum * sum) - squares);
    }

    private static double DerSimonianLaird(double[] y, double[] v)
    {
        double sum = 0, squares = 0;
        foreach (var variance in v)
        {
            sum += 1 / variance;
            squares += 1 / variance / variance;
        }

        return Math.Max(0, (At(0, y, v).Q - (y.Length - 1)) / (sum - (squares / sum)));
    }

    /// <summary>The τ² at which Q(τ²), which falls with τ², has come down to a target; 0 when it starts below.</summary>
    private static double AtQ(double target, double[] y, double[] v)
    {
        if (At(0, y, v).Q <= target)
            return 0;
        var scale = Math.Max(Summary.OfChecked(y).Variance ?? 0, v.Min());
        var high = scale;
        while (At(high, y, v).Q > target)
            high *= 2;
        return BracketedRoot.Solve(tau2 => At(tau2, y, v).Q - target, 0, high);
    }

    private static double Scoring(double[] y, double[] v, bool isRestricted)
    {
        var tau2 = DerSimonianLaird(y, v);
        for (var i = 0; i < 2000; i++)
        {
            var (mean, _, _) = At(tau2, y, v);
            double w1 = 0, w2 = 0, w3 = 0, fit = 0;
            for (var j = 0; j < y.Length; j++)
            {
                var w = 1 / (v[j] + tau2);
                w1 += w;
                w2 += w * w;
                w3 += w * w * w;
                fit += w * w * (y[j] - mean) * (y[j] - mean);
            }

            var step = isRestricted
                ? (fit - (w1 - (w2 / w1))) / (w2 - (2 * w3 / w1) + (w2 / w1 * (w2 / w1)))
                : (fit - w1) / w2;
            var next = Math.Max(0, tau2 + step);
            if (Math.Abs(next - tau2) <= 1e-13 * (tau2 + v.Min()))
                return next;
            tau2 = next;
        }

        return tau2;
    }
}
