using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Level and slope change by generalized least squares with first-order autoregressive errors, φ by maximum or restricted likelihood.</summary>
/// <remarks>
/// Errors have the stationary correlation φ^|i−j|. φ maximises the profile log-likelihood on (−1, 1): the highest interior maximum of a grid,
/// refined by golden section. Source: Pinheiro and Bates (2000), Mixed-Effects Models in S and S-PLUS, ch. 5.
/// </remarks>
public static class SegmentedLikelihood
{
    /// <summary>Method word of <see cref="MaximumLikelihood"/>.</summary>
    public const string MlMethod = "its-gls-ar1-ml";

    /// <summary>Method word of <see cref="RestrictedMaximumLikelihood"/>.</summary>
    public const string RemlMethod = "its-gls-ar1-reml";

    private const double Edge = 0.9999;
    private const int GridSteps = 400;

    /// <summary>φ by maximum likelihood. Sigma has the divisor n; standard errors of coefficients use n − 4.</summary>
    /// <param name="values">The series in order of time, equally spaced, all finite.</param>
    /// <param name="before">How many of the values lie before the change.</param>
    /// <param name="confidence">Level of the intervals, a share.</param>
    /// <returns>
    /// Undefined as for ordinary least squares, when the lines pass through every value, and when the likelihood has its maximum at the edge φ = ±1.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not finite, or <paramref name="before"/> or <paramref name="confidence"/> is out of range.</exception>
    public static SegmentedFit MaximumLikelihood(ReadOnlySpan<double> values, int before, double confidence = 0.95) =>
        Fit(MlMethod, values, before, restricted: false, confidence);

    /// <summary>φ by restricted maximum likelihood, less biased towards zero in short series. Sigma has the divisor n − 4.</summary>
    /// <inheritdoc cref="MaximumLikelihood" path="/param|/returns|/exception"/>
    public static SegmentedFit RestrictedMaximumLikelihood(ReadOnlySpan<double> values, int before, double confidence = 0.95) =>
        Fit(RemlMethod, values, before, restricted: true, confidence);

    private static SegmentedFit Fit(string method, ReadOnlySpan<double> values, int before, bool restricted, double confidence)
    {
        Finite.RequireConfidence(confidence);
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is null)
            return SegmentedFit.NotDefined(method, reason!);
        if (new LeastSquares(design.X, design.Y).IsExact)
            return SegmentedFit.NotDefined(method, "the lines pass through every value, so there are no errors to correlate");
        double Profile(double phi) => LogLikelihood(design, phi, restricted).Value;

        var grid = new double[GridSteps + 1];
        for (var i = 0; i <= GridSteps; i++)
            grid[i] = Profile(Place(i));
        var best = -1;
        for (var i = 1; i < GridSteps; i++)
        {
            if (grid[i] >= grid[i - 1] && grid[i] >= grid[i + 1] && (best < 0 || grid[i] > grid[best]))
                best = i;
        }

        if (best < 0 || Math.Max(grid[0], grid[^1]) > grid[best])
            return SegmentedFit.NotDefined(method, "the likelihood is highest where the autocorrelation reaches 1 in size, so the series fixes no value");
        var phi = GoldenSection(Profile, Place(best - 1), Place(best + 1));
        var (logLikelihood, fit) = LogLikelihood(design, phi, restricted);
        var divisor = restricted ? design.ResidualDegreesOfFreedom : design.Count;

        // The whitened rows have innovation variance; the errors themselves vary by 1/(1 − φ²) more.
        var sigma = Math.Sqrt(fit.ResidualSumOfSquares / divisor / (1 - (phi * phi))) * design.Scale;
        var scaled = restricted ? design.ResidualDegreesOfFreedom : design.Count;
        return SegmentedRegression.Assemble(method, design, fit.Coefficients, fit.Covariance, confidence) with
        {
            Autocorrelation = phi,
            Sigma = sigma,
            LogLikelihood = logLikelihood - (scaled * Math.Log(design.Scale)),
        };
    }

    private static double Place(int step) => Edge * (((2.0 * step) / GridSteps) - 1);

    private static (double Value, LeastSquares Fit) LogLikelihood(SegmentedDesign design, double phi, bool restricted)
    {
        var x = SegmentedRegression.Whiten(design.X, phi);
        var fit = new LeastSquares(x, SegmentedRegression.Whiten(design.Y, phi));
        double n = restricted ? design.ResidualDegreesOfFreedom : design.Count;
        var variance = fit.ResidualSumOfSquares / n;
        var value = (-n / 2 * (Math.Log(2 * Math.PI * variance) + 1)) + (Math.Log(1 - (phi * phi)) / 2);
        if (restricted)
            value += Math.Log(fit.Bread.Determinant()) / 2;
        return (value, fit);
    }

    private static double GoldenSection(Func<double, double> f, double low, double high)
    {
        var ratio = (Math.Sqrt(5) - 1) / 2;
        double left = high - (ratio * (high - low)), right = low + (ratio * (high - low));
        double atLeft = f(left), atRight = f(right);
        while (high - low > 1e-11)
        {
            if (atLeft >= atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (ratio * (high - low));
                atLeft = f(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (ratio * (high - low));
                atRight = f(right);
            }
        }

        return (low + high) / 2;
    }
}
