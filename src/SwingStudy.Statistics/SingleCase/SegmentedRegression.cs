using MathNet.Numerics.LinearAlgebra;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Level and slope change of an interrupted time series by least squares, with errors taken as independent or with a robust covariance.</summary>
/// <remarks>Regressors as in <see cref="SegmentedFit"/>: time 1..n, equally spaced. Intervals and p values by Student's t with n − 4 degrees of freedom.</remarks>
public static class SegmentedRegression
{
    /// <summary>Method word of <see cref="OrdinaryLeastSquares"/>.</summary>
    public const string OlsMethod = "its-ols";

    /// <summary>Method word of <see cref="HeteroskedasticityConsistent3"/>.</summary>
    public const string Hc3Method = "its-hc3";

    /// <summary>Method word of <see cref="NeweyWest"/>.</summary>
    public const string NeweyWestMethod = "its-newey-west";

    /// <summary>Method word of <see cref="PraisWinsten"/>.</summary>
    public const string PraisWinstenMethod = "its-prais-winsten";

    /// <summary>Change of ρ below which <see cref="PraisWinsten"/> counts as settled.</summary>
    public const double PraisWinstenTolerance = 1e-13;

    /// <summary>Ordinary least squares: right standard errors only when errors are independent and of equal variance.</summary>
    /// <param name="values">The series in order of time, equally spaced, all finite.</param>
    /// <param name="before">How many of the values lie before the change.</param>
    /// <param name="confidence">Level of the intervals, a share.</param>
    /// <returns>Undefined with fewer than two values on either side, fewer than five in all, or values that are all equal.</returns>
    /// <exception cref="ArgumentException">A value is not finite, or <paramref name="before"/> or <paramref name="confidence"/> is out of range.</exception>
    public static SegmentedFit OrdinaryLeastSquares(ReadOnlySpan<double> values, int before, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is null)
            return SegmentedFit.NotDefined(OlsMethod, reason!);
        var fit = new LeastSquares(design.X, design.Y);
        var mean = design.Y.Average();
        var total = design.Y.Sum(y => (y - mean) * (y - mean));
        return Assemble(OlsMethod, design, fit.Coefficients, fit.Covariance, confidence) with
        {
            Sigma = Math.Sqrt(fit.ResidualVariance) * design.Scale,
            RSquared = 1 - (fit.ResidualSumOfSquares / total),
        };
    }

    /// <summary>Least squares with the covariance HC3: robust to unequal variances, not to autocorrelation.</summary>
    /// <remarks>
    /// (X'X)⁻¹ X' diag(e²/(1 − h)²) X (X'X)⁻¹. Source: MacKinnon and White (1985), Journal of Econometrics 29:305–325.
    /// </remarks>
    /// <inheritdoc cref="OrdinaryLeastSquares" path="/param|/exception"/>
    /// <returns>As <see cref="OrdinaryLeastSquares"/>; undefined also when one value alone determines a coefficient.</returns>
    public static SegmentedFit HeteroskedasticityConsistent3(ReadOnlySpan<double> values, int before, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is null)
            return SegmentedFit.NotDefined(Hc3Method, reason!);
        var fit = new LeastSquares(design.X, design.Y);
        var weights = new double[design.Count];
        for (var i = 0; i < weights.Length; i++)
        {
            var free = 1 - fit.Leverage(i);
            if (free < 1e-10)
                return SegmentedFit.NotDefined(Hc3Method, "one value alone determines a coefficient, so its error cannot be judged");
            weights[i] = fit.Residuals[i] * fit.Residuals[i] / (free * free);
        }

        var meat = design.X.TransposeThisAndMultiply(Matrix<double>.Build.DenseOfDiagonalArray(weights) * design.X);
        return Assemble(Hc3Method, design, fit.Coefficients, fit.Bread * meat * fit.Bread, confidence);
    }

    /// <summary>Least squares with the covariance of Newey and West: robust to autocorrelation up to <paramref name="lag"/> steps in long series.</summary>
    /// <remarks>
    /// Bartlett weights 1 − l/(L + 1), no prewhitening. Source: Newey and West (1987), Econometrica 55:703–708; default lag
    /// ⌊4(n/100)^(2/9)⌋ after Newey and West (1994), Review of Economic Studies 61:631–653.
    /// </remarks>
    /// <param name="values">The series in order of time, equally spaced, all finite.</param>
    /// <param name="before">How many of the values lie before the change.</param>
    /// <param name="lag">Largest lag L; null takes the default rule.</param>
    /// <param name="smallSample">Multiplies the covariance by n/(n − 4).</param>
    /// <param name="confidence">Level of the intervals, a share.</param>
    /// <returns>As <see cref="OrdinaryLeastSquares"/>.</returns>
    /// <exception cref="ArgumentException">A value is not finite or an argument is out of range.</exception>
    public static SegmentedFit NeweyWest(
        ReadOnlySpan<double> values, int before, int? lag = null, bool smallSample = false, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is null)
            return SegmentedFit.NotDefined(NeweyWestMethod, reason!);
        var n = design.Count;
        var longest = lag ?? (int)(4 * Math.Pow(n / 100.0, 2.0 / 9));
        if (longest < 0 || longest >= n)
            throw new ArgumentException($"The lag lies between 0 and {n - 1}; got {longest}.", nameof(lag));
        var fit = new LeastSquares(design.X, design.Y);
        var scores = Matrix<double>.Build.Dense(n, SegmentedDesign.Coefficients, (i, j) => design.X[i, j] * fit.Residuals[i]);
        var meat = scores.TransposeThisAndMultiply(scores);
        for (var l = 1; l <= longest; l++)
        {
            var lagged = scores.SubMatrix(l, n - l, 0, SegmentedDesign.Coefficients)
                .TransposeThisAndMultiply(scores.SubMatrix(0, n - l, 0, SegmentedDesign.Coefficients));
            meat += (1 - (l / (longest + 1.0))) * (lagged + lagged.Transpose());
        }

        var covariance = fit.Bread * meat * fit.Bread;
        if (smallSample)
            covariance *= (double)n / design.ResidualDegreesOfFreedom;
        return Assemble(NeweyWestMethod, design, fit.Coefficients, covariance, confidence);
    }

    /// <summary>Least squares after the errors' lag-1 autocorrelation is removed, the first value kept, iterated until it settles.</summary>
    /// <remarks>
    /// ρ = Σ e(t)e(t − 1)/Σ e(t − 1)² from the residuals of the untransformed equation; rows t ≥ 2 become y(t) − ρy(t − 1), the first is scaled by
    /// √(1 − ρ²). Source: Prais and Winsten (1954), Cowles Commission discussion paper 383.
    /// </remarks>
    /// <inheritdoc cref="OrdinaryLeastSquares" path="/param|/exception"/>
    /// <returns>As <see cref="OrdinaryLeastSquares"/>; undefined also when ρ leaves (−1, 1) or does not settle.</returns>
    public static SegmentedFit PraisWinsten(ReadOnlySpan<double> values, int before, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (design, reason) = SegmentedDesign.Of(values, before);
        if (design is null)
            return SegmentedFit.NotDefined(PraisWinstenMethod, reason!);
        var fit = new LeastSquares(design.X, design.Y);
        if (fit.IsExact)
            return SegmentedFit.NotDefined(PraisWinstenMethod, "the lines pass through every value, so there are no errors to correlate");
        var rho = 0.0;
        for (var round = 0; round < 2000; round++)
        {
            var next = LagRatio(design.Y - (design.X * fit.Coefficients));
            if (!(Math.Abs(next) < 1))
                return SegmentedFit.NotDefined(PraisWinstenMethod, $"the errors' autocorrelation leaves the range of a steady series");
            fit = new LeastSquares(Whiten(design.X, next), Whiten(design.Y, next));
            if (Math.Abs(next - rho) < PraisWinstenTolerance)
            {
                return Assemble(PraisWinstenMethod, design, fit.Coefficients, fit.Covariance, confidence) with
                {
                    Autocorrelation = next,
                    Sigma = Math.Sqrt(fit.ResidualVariance) * design.Scale,
                };
            }

            rho = next;
        }

        return SegmentedFit.NotDefined(PraisWinstenMethod, "the errors' autocorrelation does not settle");
    }

    internal static Matrix<double> Whiten(Matrix<double> x, double rho) => Matrix<double>.Build.Dense(
        x.RowCount, x.ColumnCount, (i, j) => i == 0 ? Math.Sqrt(1 - (rho * rho)) * x[0, j] : x[i, j] - (rho * x[i - 1, j]));

    internal static Vector<double> Whiten(Vector<double> y, double rho) => Vector<double>.Build.Dense(
        y.Count, i => i == 0 ? Math.Sqrt(1 - (rho * rho)) * y[0] : y[i] - (rho * y[i - 1]));

    internal static SegmentedFit Assemble(
        string method, SegmentedDesign design, Vector<double> coefficients, Matrix<double> covariance, double confidence)
    {
        var df = design.ResidualDegreesOfFreedom;
        var t = StudentT.Critical(confidence, df);
        return new SegmentedFit
        {
            Method = method,
            Intercept = Term(0),
            Time = Term(1),
            LevelChange = Term(2),
            SlopeChange = Term(3),
        };

        Estimate Term(int index)
        {
            var value = (coefficients[index] * design.Scale) + (index == 0 ? design.Origin : 0);
            var se = Math.Sqrt(Math.Max(0, covariance[index, index])) * design.Scale;
            return new Estimate
            {
                Method = method,
                Value = value,
                StandardError = se,
                Interval = new Interval(value - (t * se), value + (t * se), confidence),
                P = se > 0 ? StudentT.TwoSided(value / se, df) : null,
                DegreesOfFreedom = df,
            };
        }
    }

    private static double LagRatio(Vector<double> errors)
    {
        double products = 0, squares = 0;
        for (var i = 1; i < errors.Count; i++)
        {
            products += errors[i] * errors[i - 1];
            squares += errors[i - 1] * errors[i - 1];
        }

        return squares > 0 ? products / squares : double.NaN;
    }
}
