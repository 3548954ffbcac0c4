using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>Effects of several players (or studies) with their sampling variances, brought together.</summary>
/// <remarks>
/// Random effects: weights 1/(v + τ²). I² = τ²/(τ² + typical v). Knapp-Hartung: SE² = Σ w (y − μ)²/((k − 1) Σw), t with k − 1 degrees of freedom,
/// not cut. The prediction interval says where the true effect of the next player may lie. Sources: Borenstein et al. (2009), part 3;
/// Knapp and Hartung (2003), Statistics in Medicine 22:2693–2710; Higgins, Thompson and Spiegelhalter (2009), JRSS A 172:137–159.
/// </remarks>
public sealed record MetaAnalysis
{
    /// <summary>Number of effects k.</summary>
    public required int Count { get; init; }

    /// <summary>How τ² was estimated.</summary>
    public required HeterogeneityEstimator Estimator { get; init; }

    /// <summary>One common effect, inverse-variance weights, normal interval; method <c>meta-common-effect</c>.</summary>
    public required Estimate CommonEffect { get; init; }

    /// <summary>Q: Σ (y − common effect)²/v.</summary>
    public required double Q { get; init; }

    /// <summary>P(χ² with k − 1 degrees of freedom exceeds Q).</summary>
    public required double QP { get; init; }

    /// <summary>τ², with its Q-profile interval.</summary>
    public required Estimate TauSquared { get; init; }

    /// <summary>Mean effect under random effects, normal interval.</summary>
    public required Estimate RandomEffects { get; init; }

    /// <summary>Mean effect under random effects, Knapp and Hartung's SE and t interval.</summary>
    public required Estimate KnappHartung { get; init; }

    /// <summary>μ ∓ z √(τ² + SE²).</summary>
    public required Interval PredictionNormal { get; init; }

    /// <summary>μ ∓ t(k − 1) √(τ² + Knapp-Hartung SE²).</summary>
    public required Interval PredictionKnappHartung { get; init; }

    /// <summary>μ ∓ t(k − 2) √(τ² + SE²); null with two effects.</summary>
    public required Interval? PredictionHiggins { get; init; }

    /// <summary>Share of the variance of observed effects that is heterogeneity, 0 to 1, from τ².</summary>
    public required double ISquared { get; init; }

    /// <summary>1 + τ²/typical v.</summary>
    public required double HSquared { get; init; }

    /// <summary>max(0, (Q − (k − 1))/Q), 0 to 1.</summary>
    public required double ISquaredFromQ { get; init; }

    /// <summary>Brings effects together.</summary>
    /// <param name="effects">One a player, all finite.</param>
    /// <param name="variances">Their sampling variances (SE²), all positive.</param>
    /// <param name="estimator">How τ² is estimated.</param>
    /// <param name="confidence">Level of all intervals.</param>
    /// <returns>The analysis, or null with fewer than two effects.</returns>
    /// <exception cref="ArgumentException">The lengths differ, an effect is not finite, a variance not positive, or the confidence out of range.</exception>
    public static MetaAnalysis? Of(
        ReadOnlySpan<double> effects, ReadOnlySpan<double> variances, HeterogeneityEstimator estimator = HeterogeneityEstimator.Reml, double confidence = 0.95)
    {
        Check(effects, variances, confidence);
        if (effects.Length < 2)
            return null;
        var (y, v, k) = (effects.ToArray(), variances.ToArray(), effects.Length);
        var common = Heterogeneity.At(0, y, v);
        var tau2 = Heterogeneity.TauSquared(estimator, y, v);
        var (mean, weights, q) = Heterogeneity.At(tau2, y, v);
        var (se, hartung) = (1 / Math.Sqrt(weights), Math.Sqrt(q / ((k - 1) * weights)));
        var typical = Heterogeneity.TypicalVariance(v);
        var word = Word(estimator);
        return new MetaAnalysis
        {
            Count = k,
            Estimator = estimator,
            CommonEffect = WithNormal("meta-common-effect", common.Mean, 1 / Math.Sqrt(common.WeightSum), confidence),
            Q = common.Q,
            QP = ChiSquare.UpperTail(common.Q, k - 1),
            TauSquared = Estimate.Of("meta-tau-squared-" + word, tau2, interval: Heterogeneity.QProfile(y, v, confidence)),
            RandomEffects = WithNormal("meta-" + word, mean, se, confidence),
            KnappHartung = WithStudent($"meta-{word}-knapp-hartung", mean, hartung, k - 1, confidence),
            PredictionNormal = Limits.Normal(mean, Math.Sqrt(tau2 + (se * se)), confidence),
            PredictionKnappHartung = Limits.StudentT(mean, Math.Sqrt(tau2 + (hartung * hartung)), k - 1, confidence),
            PredictionHiggins = k > 2 ? Limits.StudentT(mean, Math.Sqrt(tau2 + (se * se)), k - 2, confidence) : null,
            ISquared = tau2 / (tau2 + typical),
            HSquared = 1 + (tau2 / typical),
            ISquaredFromQ = common.Q > 0 ? Math.Max(0, (common.Q - (k - 1)) / common.Q) : 0,
        };
    }

    /// <summary>The estimator in method words.</summary>
    internal static string Word(HeterogeneityEstimator estimator) => estimator switch
    {
        HeterogeneityEstimator.DerSimonianLaird => "dersimonian-laird",
        HeterogeneityEstimator.PauleMandel => "paule-mandel",
        HeterogeneityEstimator.Reml => "reml",
        HeterogeneityEstimator.Ml => "ml",
        _ => throw new ArgumentOutOfRangeException(nameof(estimator), estimator, "Not an estimator of heterogeneity."),
    };

    private static Estimate WithNormal(string method, double value, double se, double confidence) =>
        Estimate.Of(method, value, se, Limits.Normal(value, se, confidence), Math.Min(1, 2 * Normal.UpperTail(Math.Abs(value) / se)));

    private static Estimate WithStudent(string method, double value, double se, double df, double confidence)
    {
        double? p = se > 0 ? StudentT.TwoSided(value / se, df) : value == 0 ? 1 : null;
        return Estimate.Of(method, value, se, Limits.StudentT(value, se, df, confidence), p, df);
    }

    private static void Check(ReadOnlySpan<double> effects, ReadOnlySpan<double> variances, double confidence)
    {
        Finite.Require(effects, nameof(effects));
        Finite.Require(variances, nameof(variances));
        Finite.RequireConfidence(confidence);
        if (effects.Length != variances.Length)
            throw new ArgumentException($"{effects.Length} effects but {variances.Length} variances.", nameof(variances));
        for (var i = 0; i < variances.Length; i++)
        {
            if (!(variances[i] > 1e-150))
                throw new ArgumentException($"A sampling variance must be positive; place {i + 1} holds {variances[i]}.", nameof(variances));
        }
    }
}
