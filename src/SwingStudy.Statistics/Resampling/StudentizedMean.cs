using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Studentized (bootstrap-t) interval of a mean.</summary>
public static class StudentizedMean
{
    /// <summary>Method word.</summary>
    public const string Method = "mean-bootstrap-studentized";

    /// <summary>The mean with its studentized interval: each resample's deviation is divided by its own standard error s*/√n.</summary>
    /// <remarks>Source: Hall (1988), Annals of Statistics 16:927–953; Efron and Tibshirani (1993), ch. 12.</remarks>
    /// <param name="values">Independent values, all finite.</param>
    /// <param name="chance">The stream of the resamples; it is split, not drawn from.</param>
    /// <param name="resamples">Number of resamples, at least 1.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined without values; without interval when values do not vary. Resamples without scatter are left out.</returns>
    /// <exception cref="ArgumentException">A value is not finite or a number is out of range.</exception>
    public static Estimate Of(ReadOnlySpan<double> values, Xoshiro256 chance, int resamples = 9999, double confidence = 0.95, int threads = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        Finite.RequireConfidence(confidence);
        var summary = Summary.Of(values);
        if (summary.Mean is not { } mean)
            return Estimate.NotDefined(Method, "needs at least one value, got none");
        var n = values.Length;
        var error = summary.StandardDeviation / Math.Sqrt(n);
        if (error is not > 0 || !double.IsFinite(1 / error.Value))
            return new Estimate { Method = Method, Value = mean };

        // Deviations in units of the standard error: the interval comes back in the unit of the values.
        var deviations = new double[n];
        for (var i = 0; i < n; i++)
            deviations[i] = (values[i] - mean) / error.Value;
        var means = new double[resamples];
        var errors = new double[resamples];
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            var words = new uint[n];
            for (var i = start; i < end; i++)
            {
                stream.Fill(words);
                double sum = 0, squares = 0;
                foreach (var word in words)
                {
                    var deviation = deviations[Xoshiro256.Index(word, n)];
                    sum += deviation;
                    squares += deviation * deviation;
                }

                means[i] = sum / n;
                var rest = squares - (sum * means[i]);
                errors[i] = rest > 1e-13 * squares ? Math.Sqrt(rest / (n - 1.0) / n) : 0;
            }
        });
        var interval = BootstrapDistribution.Studentized(0, 1, means, errors, confidence);
        return Estimate.Of(Method, mean, error, interval is { } limits
            ? new Interval(mean + (limits.Low * error.Value), mean + (limits.High * error.Value), confidence)
            : null);
    }
}
