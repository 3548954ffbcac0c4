using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Reliability;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>A fitted linear mixed model.</summary>
public sealed class MixedModelFit
{
    private readonly double _slopeScale;

    internal MixedModelFit(
        MixedModelData data, Likelihood likelihood, double[] theta, bool hasConverged, bool isRestricted, double centre, int interceptColumn, double slopeScale)
    {
        (Data, Likelihood, Theta, HasConverged, IsRestricted, _slopeScale) = (data, likelihood, theta, hasConverged, isRestricted, slopeScale);
        var (beta, inverse, squares) = likelihood.Solve(theta);
        CentredCoefficients = (double[])beta.Clone();
        Centre = centre;
        if (interceptColumn >= 0)
            beta[interceptColumn] += centre;
        ResidualVariance = squares / likelihood.Divisor;
        Coefficients = beta;
        UnscaledCovariance = inverse;
        Deviance = likelihood.Deviance(theta);
    }

    /// <summary>Whether by REML, else by ML.</summary>
    public bool IsRestricted { get; }

    /// <summary>Whether the minimiser settled.</summary>
    public bool HasConverged { get; }

    /// <summary>Names of the fixed effects, in order.</summary>
    public IReadOnlyList<string> FixedEffectNames => Data.FixedEffectNames;

    /// <summary>β, one a fixed effect.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>σ²: variance of the error.</summary>
    public double ResidualVariance { get; }

    /// <summary>Variance of the random intercepts of subjects.</summary>
    public double SubjectVariance => Theta[0] * Theta[0] * ResidualVariance;

    /// <summary>Variance of the random slopes of subjects; null without slopes.</summary>
    public double? SlopeVariance =>
        HasSlope ? ((Theta[1] * Theta[1]) + (Theta[2] * Theta[2])) * ResidualVariance / (_slopeScale * _slopeScale) : null;

    /// <summary>Covariance of random intercept and slope; null without slopes.</summary>
    public double? InterceptSlopeCovariance => HasSlope ? Theta[0] * Theta[1] * ResidualVariance / _slopeScale : null;

    /// <summary>Variance of the random intercepts of sessions in subjects; null without sessions.</summary>
    public double? SessionVariance => Data.Sessions is null ? null : Theta[^1] * Theta[^1] * ResidualVariance;

    /// <summary>Whether a variance is zero, or intercept and slope are perfectly correlated: the data ask for less structure.</summary>
    public bool IsSingular => Theta.Where((_, i) => !HasSlope || i != 1).Any(t => t < 1e-4);

    /// <summary>−2 ln L, restricted under REML.</summary>
    public double Deviance { get; }

    /// <summary>ln L, restricted under REML.</summary>
    public double LogLikelihood => -Deviance / 2;

    /// <summary>−2 ln L + 2 (parameters). Compare only fits of the same kind, and REML only with equal fixed effects.</summary>
    public double Aic => Deviance + (2 * ParameterCount);

    /// <summary>−2 ln L + ln n (parameters).</summary>
    public double Bic => Deviance + (Math.Log(Data.Count) * ParameterCount);

    /// <summary>The variances of player, session and swing for planning; null without sessions or with slopes.</summary>
    public VarianceComponents? Components => SessionVariance is { } session && !HasSlope
        ? new VarianceComponents(IsRestricted ? "variance-components-reml" : "variance-components-ml", SubjectVariance, session, ResidualVariance, IsSingular)
        : null;

    internal MixedModelData Data { get; }

    internal Likelihood Likelihood { get; }

    internal double[] Theta { get; }

    internal bool HasSlope => Data.Slope is not null;

    /// <summary>The slope predictor is divided by this inside.</summary>
    internal double SlopeScale => _slopeScale;

    internal double Centre { get; }

    /// <summary>β of y less its centre.</summary>
    internal double[] CentredCoefficients { get; }

    /// <summary>(X' W⁻¹ X)⁻¹.</summary>
    internal double[,] UnscaledCovariance { get; }

    private int ParameterCount => Coefficients.Count + Theta.Length + 1;

    /// <summary>Covariance of β: σ² (X' W⁻¹ X)⁻¹.</summary>
    public double[,] CoefficientCovariance()
    {
        var covariance = (double[,])UnscaledCovariance.Clone();
        for (var r = 0; r < covariance.GetLength(0); r++)
        {
            for (var c = 0; c < covariance.GetLength(1); c++)
                covariance[r, c] *= ResidualVariance;
        }

        return covariance;
    }

    /// <summary>A linear combination of the fixed effects, tested with degrees of freedom by Satterthwaite.</summary>
    /// <param name="weights">One a fixed effect.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Method <c>mixed-model-satterthwaite</c>.</returns>
    /// <exception cref="ArgumentException">The number of weights is not that of the fixed effects, or the confidence is out of range.</exception>
    public Estimate Satterthwaite(ReadOnlySpan<double> weights, double confidence = 0.95)
    {
        Check(weights, confidence);
        var (variance, df) = SatterthwaiteDegrees.Of(this, weights);
        return Tested("mixed-model-satterthwaite", weights, variance, df, confidence);
    }

    /// <summary>A linear combination of the fixed effects, with covariance and degrees of freedom by Kenward and Roger. For REML fits.</summary>
    /// <param name="weights">One a fixed effect.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Method <c>mixed-model-kenward-roger</c>. Undefined for ML fits.</returns>
    /// <exception cref="ArgumentException">The number of weights is not that of the fixed effects, or the confidence is out of range.</exception>
    public Estimate KenwardRoger(ReadOnlySpan<double> weights, double confidence = 0.95)
    {
        Check(weights, confidence);
        if (!IsRestricted)
            return Estimate.NotDefined("mixed-model-kenward-roger", "Kenward and Roger's method needs a REML fit");
        var (variance, df) = KenwardRogerAdjustment.Of(this).Test(weights);
        return Tested("mixed-model-kenward-roger", weights, variance, df, confidence);
    }

    /// <summary>Covariance of β adjusted by Kenward and Roger; null for ML fits.</summary>
    public double[,]? KenwardRogerCovariance() => IsRestricted ? KenwardRogerAdjustment.Of(this).Covariance : null;

    /// <summary>Best linear unbiased predictions of the subjects' random effects, subjects in order of first appearance.</summary>
    /// <returns>Intercept and slope (0 without slopes) of each subject, and the intercept of each session in order of first appearance.</returns>
    public RandomEffects PredictRandomEffects() => RandomEffects.Of(this);

    private Estimate Tested(string method, ReadOnlySpan<double> weights, double variance, double df, double confidence)
    {
        var value = 0.0;
        for (var i = 0; i < weights.Length; i++)
            value += weights[i] * Coefficients[i];
        var se = Math.Sqrt(variance);
        if (!(se > 0) || !(df > 0))
            return Estimate.Of(method, value, se);
        return Estimate.Of(method, value, se, Limits.StudentT(value, se, df, confidence), StudentT.TwoSided(value / se, df), df);
    }

    private void Check(ReadOnlySpan<double> weights, double confidence)
    {
        Description.Finite.RequireConfidence(confidence);
        Description.Finite.Require(weights, nameof(weights));
        if (weights.Length != Coefficients.Count)
            throw new ArgumentException($"Needs a weight for each of {Coefficients.Count} fixed effects; got {weights.Length}.", nameof(weights));
    }
}
