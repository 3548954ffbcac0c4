using MathNet.Numerics.LinearAlgebra;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Serial dependence in the residuals of an interrupted time series fitted by ordinary least squares.</summary>
public sealed record SeriesResiduals
{
    /// <summary>Method word of <see cref="DurbinWatson"/>.</summary>
    public const string DurbinWatsonMethod = "durbin-watson";

    /// <summary>Values minus fitted values, in order of time; empty when there is no fit.</summary>
    public required IReadOnlyList<double> Residuals { get; init; }

    /// <summary>
    /// d = Σ(eₜ − eₜ₋₁)²/Σeₜ², about 2(1 − r₁), with the exact two-sided p (twice the smaller tail) given the regressors.
    /// </summary>
    public required Estimate DurbinWatson { get; init; }

    /// <summary>Lag-1 autocorrelation of the residuals.</summary>
    public required Estimate Autocorrelation { get; init; }

    /// <summary>The same with its bias from fitting four coefficients taken off.</summary>
    public required Estimate AutocorrelationBiasCorrected { get; init; }

    /// <summary>Fits level and slope change and looks at what is left.</summary>
    /// <remarks>
    /// Null distribution of d: P(Σ(λᵢ − d)zᵢ² &lt; 0) with λᵢ the non-zero eigenvalues of MA, M the residual projection and A the
    /// first-difference form. Source: Durbin and Watson (1950, 1951), Biometrika 37:409–428 and 38:159–178.
    /// </remarks>
    /// <param name="values">The series in order of time, equally spaced, all finite.</param>
    /// <param name="before">How many of the values lie before the change.</param>
    /// <returns>Undefined as for ordinary least squares, and when the lines pass through every value.</returns>
    /// <exception cref="ArgumentException">A value is not finite or <paramref name="before"/> is out of range.</exception>
    public static SeriesResiduals Of(ReadOnlySpan<double> values, int before)
    {
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is not null)
        {
            var fit = new LeastSquares(design.X, design.Y);
            if (!fit.IsExact)
                return Of(design, fit);
            reason = "the lines pass through every value, so there are no residuals to judge";
        }

        return new SeriesResiduals
        {
            Residuals = [],
            DurbinWatson = Estimate.NotDefined(DurbinWatsonMethod, reason!),
            Autocorrelation = Estimate.NotDefined(LagOneAutocorrelation.ConventionalMethod, reason!),
            AutocorrelationBiasCorrected = Estimate.NotDefined(LagOneAutocorrelation.BiasCorrectedMethod, reason!),
        };
    }

    private static SeriesResiduals Of(SegmentedDesign design, LeastSquares fit)
    {
        double[] residuals = [.. fit.Residuals];
        var differences = 0.0;
        for (var i = 1; i < residuals.Length; i++)
            differences += (residuals[i] - residuals[i - 1]) * (residuals[i] - residuals[i - 1]);
        var d = differences / fit.ResidualSumOfSquares;
        var below = QuadraticForm.ProbabilityBelowZero([.. Eigenvalues(design).Select(value => value - d)]);
        return new SeriesResiduals
        {
            Residuals = [.. residuals.Select(e => e * design.Scale)],
            DurbinWatson = new Estimate { Method = DurbinWatsonMethod, Value = d, P = Math.Min(1, 2 * Math.Min(below, 1 - below)) },
            Autocorrelation = LagOneAutocorrelation.Conventional(residuals),
            AutocorrelationBiasCorrected = LagOneAutocorrelation.BiasCorrected(residuals, SegmentedDesign.Coefficients),
        };
    }

    // Non-zero eigenvalues of MA are those of N'AN, N an orthonormal basis of what the regressors leave over.
    private static IEnumerable<double> Eigenvalues(SegmentedDesign design)
    {
        var n = design.Count;
        var rest = design.X.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Full)
            .Q.SubMatrix(0, n, SegmentedDesign.Coefficients, n - SegmentedDesign.Coefficients);
        var steps = Matrix<double>.Build.Dense(n - 1, rest.ColumnCount, (i, j) => rest[i + 1, j] - rest[i, j]);
        return steps.TransposeThisAndMultiply(steps).Evd(Symmetricity.Symmetric).EigenValues.Select(value => value.Real);
    }
}
