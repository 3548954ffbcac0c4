using MathNet.Numerics.LinearAlgebra;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Between-case standardized mean difference by restricted maximum likelihood, simplest model.</summary>
/// <remarks>
/// y = β₀ + β₁·treated + u(case) + e, var u = τ², e first-order autoregressive over session numbers with variance σ². δ = β₁/√(τ² + σ²);
/// ν = 2(τ² + σ²)²/(r'I⁻¹r), I the expected information of (τ², φ, σ²), r = (1, 0, 1).
/// Source: Pustejovsky, Hedges and Shadish (2014), Journal of Educational and Behavioral Statistics 39:368–393.
/// </remarks>
public sealed record BetweenCaseLikelihood
{
    /// <summary>Method word of the effect.</summary>
    public const string Method = "bc-smd-reml";

    /// <summary>The effect and its parts.</summary>
    public required BetweenCaseEffect Effect { get; init; }

    /// <summary>β₀ and β₁, in units of y; empty when undefined.</summary>
    public IReadOnlyList<double> Coefficients { get; init; } = [];

    /// <summary>Standard errors of β₀ and β₁.</summary>
    public IReadOnlyList<double> StandardErrors { get; init; } = [];

    /// <summary>Restricted log-likelihood at the optimum, without the constant ½ log|X'X|; null when undefined.</summary>
    public double? LogLikelihood { get; init; }

    /// <summary>Inverse expected information of τ², φ, σ², row by row; empty when undefined.</summary>
    public IReadOnlyList<IReadOnlyList<double>> InverseInformation { get; init; } = [];

    /// <summary>Fits the model.</summary>
    /// <inheritdoc cref="BetweenCaseMoments.MultipleBaseline" path="/param"/>
    /// <returns>
    /// Undefined with fewer than two cases, a case without a phase, no scatter within phases, or a likelihood highest at an autocorrelation of 1 in size.
    /// </returns>
    /// <exception cref="ArgumentException">Columns differ in length, a value is not finite, or a case has two values at one time.</exception>
    public static BetweenCaseLikelihood MultipleBaseline(
        ReadOnlySpan<int> cases, ReadOnlySpan<int> times, ReadOnlySpan<bool> treated, ReadOnlySpan<double> values, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var series = BetweenCaseSeries.Of(cases, new int[values.Length], treated, times, values);
        if (series.Lack() is { } lack)
            return NotDefined(series, lack);
        var model = new CaseMixedModel(series);
        if (!model.HasScatter)
            return NotDefined(series, "needs scatter within phases");
        if (model.Maximize() is not { } place)
            return NotDefined(series, "the likelihood is highest where the autocorrelation reaches 1 in size, so the series fix no value");
        var fit = model.At(place.Share, place.Phi);
        var total = fit.Variance;
        var inverse = model.InverseInformation(place.Share, place.Phi, total);
        var gradient = inverse[0, 0] + inverse[2, 2] + (2 * inverse[0, 2]);
        var nu = 2 * total * total / gradient;
        double change = fit.Coefficients[1], error = Math.Sqrt(fit.Covariance[1, 1]);
        var root = Math.Sqrt(total);
        var square = series.Scale * series.Scale;
        return new BetweenCaseLikelihood
        {
            Effect = BetweenCaseMoments.Assemble(
                Method, series, change, total, change / root, error / root, nu, useCorrected: false, confidence) with
            {
                WithinVariance = (1 - place.Share) * total * square,
                BetweenVariance = place.Share * total * square,
                Autocorrelation = place.Phi,
                IntraclassCorrelation = place.Share,
            },
            Coefficients = [(fit.Coefficients[0] * series.Scale) + series.Origin, change * series.Scale],
            StandardErrors = [Math.Sqrt(fit.Covariance[0, 0]) * series.Scale, error * series.Scale],
            LogLikelihood = fit.LogLikelihood - ((series.Count - 2) * Math.Log(series.Scale)),
            InverseInformation = Rescaled(inverse, square),
        };
    }

    private static BetweenCaseLikelihood NotDefined(BetweenCaseSeries series, string reason) =>
        new() { Effect = BetweenCaseEffect.NotDefined(Method, series, reason) };

    // τ² and σ² carry the unit squared, φ none.
    private static IReadOnlyList<IReadOnlyList<double>> Rescaled(Matrix<double> inverse, double square)
    {
        double[] unit = [square, 1, square];
        return [.. Enumerable.Range(0, 3).Select(i => (IReadOnlyList<double>)[.. Enumerable.Range(0, 3).Select(j => inverse[i, j] * unit[i] * unit[j])])];
    }
}
