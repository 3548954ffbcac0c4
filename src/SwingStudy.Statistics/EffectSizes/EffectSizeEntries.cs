using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>The catalogue entries of effect sizes.</summary>
internal static class EffectSizeEntries
{
    private const string Independence = "Values are independent of each other within and between the conditions; sessions are not modelled.";
    private const string NormalValues = "Values are normally distributed within a condition.";
    private const string EqualScatter = "Both conditions scatter equally.";
    private const string PairIndependence = "Pairs are independent of each other.";
    private const string NormalChanges = "Changes are normally distributed.";
    private const string RatioScale = "Values are on a ratio scale and both means lie well above zero.";
    private const string Ordinal = "Only the order of the values counts.";

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Independent(MeanDifference.PooledMethod, "Mean difference, pooled variance", "Δx̄", "mean(after) − mean(before); t interval with n₁ + n₂ − 2 degrees of freedom.",
            MeanDifference.Pooled, [Independence, NormalValues, EqualScatter], ["borenstein-2009"]),
        Independent(MeanDifference.WelchMethod, "Mean difference, a variance for each condition", "Δx̄", "mean(after) − mean(before); t interval with Welch's degrees of freedom.",
            MeanDifference.Welch, [Independence, NormalValues], ["welch-1947"]),
        Paired(MeanDifference.PairedMethod, "Mean paired difference", "d̄", "Mean of after − before over pairs; t interval with n − 1 degrees of freedom.",
            MeanDifference.Paired, [PairIndependence, NormalChanges], ["borenstein-2009"]),
        Independent(PercentChange.IndependentMethod, "Percent change of the mean", "%Δ", "100 (mean(after)/mean(before) − 1); interval from the log response ratio.",
            PercentChange.Independent, [Independence, RatioScale], ["hedges-1999"], lower: -100),
        Paired(PercentChange.PairedMethod, "Percent change of the mean, paired", "%Δ", "100 (mean(after)/mean(before) − 1); interval from the paired log response ratio.",
            PercentChange.Paired, [PairIndependence, RatioScale], ["hedges-1999"], lower: -100),
        Pairs(PercentChange.IndividualMethod, "Mean of individual percent changes", "mean %Δ", "Mean over pairs of 100 (after/before − 1); t interval.",
            PercentChange.MeanOfIndividual, [PairIndependence, RatioScale, "Percent changes are normally distributed."], ["hedges-1999"]),
        Independent(HedgesG.UncorrectedMethod, "Standardized difference by the pooled standard deviation, uncorrected", "d", "(mean(after) − mean(before))/s_pooled; noncentral t interval.",
            HedgesG.Uncorrected, [Independence, NormalValues, EqualScatter], ["borenstein-2009", "cumming-finch-2001"]),
        Independent(HedgesG.PooledMethod, "Hedges' g by the pooled standard deviation, exact correction", "g", "J(n₁ + n₂ − 2) d with the exact J; noncentral t interval times J.",
            HedgesG.Pooled, [Independence, NormalValues, EqualScatter], ["hedges-olkin-1985", "cumming-finch-2001"]),
        Independent(HedgesG.LargeSampleMethod, "Hedges' g by the pooled standard deviation, approximate correction and large-sample interval", "g", "(1 − 3/(4ν − 1)) d; normal interval.",
            HedgesG.PooledLargeSample, [Independence, NormalValues, EqualScatter, "Samples are large."], ["borenstein-2009"]),
        Independent(GlassDelta.UncorrectedMethod, "Glass's Δ by the baseline standard deviation, uncorrected", "Δ", "(mean(after) − mean(before))/s(before); noncentral t interval.",
            GlassDelta.Uncorrected, [Independence, NormalValues], ["glass-1976", "hedges-olkin-1985"]),
        Independent(GlassDelta.CorrectedMethod, "Glass's Δ by the baseline standard deviation, exact correction", "Δ", "J(n₁ − 1) Δ with the exact J; noncentral t interval times J.",
            GlassDelta.Corrected, [Independence, NormalValues], ["hedges-olkin-1985"]),
        Paired(StandardizedChange.DifferencesMethod, "Standardized change by the standard deviation of the changes", "g_z", "J(n − 1) mean change / SD of the changes; noncentral t interval.",
            StandardizedChange.ByDifferences, [PairIndependence, NormalChanges], ["lakens-2013", "cumming-finch-2001"]),
        Paired(StandardizedChange.AverageMethod, "Standardized change by the mean of both standard deviations", "g_av", "J(n − 1) mean change / ((s₁ + s₂)/2); normal interval.",
            StandardizedChange.ByAverage, [PairIndependence, NormalValues], ["lakens-2013"]),
        Paired(StandardizedChange.AverageVarianceMethod, "Standardized change by the root mean square of both standard deviations", "g_av", "J(n − 1) mean change / √((s₁² + s₂²)/2); normal interval.",
            StandardizedChange.ByAverageVariance, [PairIndependence, NormalValues], ["lakens-2013"]),
        Paired(StandardizedChange.RepeatedMeasuresMethod, "Standardized change by the within-condition SD that the changes imply", "g_rm", "J(n − 1) mean change √(2(1 − r)) / SD of the changes; normal interval.",
            StandardizedChange.ByRepeatedMeasures, [PairIndependence, NormalValues, EqualScatter], ["borenstein-2009", "lakens-2013"]),
        Paired(StandardizedChange.BaselineMethod, "Standardized change by the baseline standard deviation, paired", "g_pre", "J(n − 1) mean change / s(before); normal interval.",
            StandardizedChange.ByBaseline, [PairIndependence, NormalValues], ["becker-1988", "morris-deshon-2002"]),
        Independent(LogResponseRatio.IndependentMethod, "Log response ratio", "ln RR", "ln(mean(after)/mean(before)); normal interval by the delta method.",
            LogResponseRatio.Independent, [Independence, RatioScale], ["hedges-1999"]),
        Independent(LogResponseRatio.PooledMethod, "Log response ratio, pooled variance", "ln RR", "ln(mean(after)/mean(before)) with the pooled variance in both terms.",
            LogResponseRatio.IndependentPooled, [Independence, RatioScale, EqualScatter], ["borenstein-2009"]),
        Independent(LogResponseRatio.CorrectedMethod, "Log response ratio, small-sample correction", "ln RRΔ", "ln RR + ½(s₂²/(n₂ m₂²) − s₁²/(n₁ m₁²)).",
            LogResponseRatio.IndependentCorrected, [Independence, RatioScale], ["lajeunesse-2015"]),
        Paired(LogResponseRatio.PairedMethod, "Log response ratio, paired", "ln RR", "ln(mean(after)/mean(before)); variance reduced by the correlation.",
            LogResponseRatio.Paired, [PairIndependence, RatioScale], ["lajeunesse-2015"]),
        Entry(Dominance.SuperiorityMethod, "Probability of superiority", "A", "P(after > before) + ½ P(after = before) over all pairs of values.", InputColumns.Value | InputColumns.Condition,
            input => EntryParts.TwoConditions(Dominance.SuperiorityMethod, input, (b, a) => Dominance.Of(b, a).ProbabilityOfSuperiority(input.Confidence)),
            [Independence, Ordinal], ["vargha-delaney-2000"], 0, 1, 0.5),
        Entry(Dominance.CliffMethod, "Cliff's δ", "δ", "P(after > before) − P(after < before) over all pairs of values.", InputColumns.Value | InputColumns.Condition,
            input => EntryParts.TwoConditions(Dominance.CliffMethod, input, (b, a) => Dominance.Of(b, a).CliffsDelta(input.Confidence)),
            [Independence, Ordinal], ["cliff-1993"], -1, 1, 0),
        Entry(Dominance.RankBiserialMethod, "Rank-biserial correlation of two independent samples", "r_rb", "2U/(n₁ n₂) − 1; equals Cliff's δ.", InputColumns.Value | InputColumns.Condition,
            input => EntryParts.TwoConditions(Dominance.RankBiserialMethod, input, (b, a) => Dominance.Of(b, a).RankBiserial(input.Confidence)),
            [Independence, Ordinal], ["kerby-2014", "cliff-1993"], -1, 1, 0),
        Entry(PairedDominance.SuperiorityMethod, "Probability of superiority, paired", "A", "Share of pairs that rose, half of those unchanged added.", InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
            input => EntryParts.Pairs(PairedDominance.SuperiorityMethod, input, (b, a) => PairedDominance.Of(b, a).ProbabilityOfSuperiority()),
            [PairIndependence, Ordinal], ["vargha-delaney-2000"], 0, 1, 0.5),
        Entry(PairedDominance.RankBiserialMethod, "Matched-pairs rank-biserial correlation", "r_rb", "(T+ − T−)/(T+ + T−) over mid-ranks of the sizes of the non-zero changes.", InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
            input => EntryParts.Pairs(PairedDominance.RankBiserialMethod, input, (b, a) => PairedDominance.Of(b, a).RankBiserial()),
            [PairIndependence, "Changes are comparable in size."], ["kerby-2014"], -1, 1, 0),
        Independent(NormalSuperiority.IndependentMethod, "Probability of superiority under normal distributions", "CL", "Φ(d/√2) with the pooled standard deviation.",
            NormalSuperiority.Independent, [Independence, NormalValues, EqualScatter], ["lakens-2013"], 0, 1, 0.5),
        Paired(NormalSuperiority.PairedMethod, "Chance that a pair rises, under normal changes", "CL", "Φ(mean change / SD of the changes).",
            NormalSuperiority.Paired, [PairIndependence, NormalChanges], ["lakens-2013"], 0, 1, 0.5),
    ];

    private static StatisticDefinition Independent(
        string name, string title, string symbol, string what, Func<IndependentContrast, double, Estimate> compute,
        string[] assumptions, string[] citations, double lower = double.NegativeInfinity, double upper = double.PositiveInfinity, double none = 0) =>
        Entry(name, title, symbol, what, InputColumns.Value | InputColumns.Condition,
            input => EntryParts.Independent(name, input, compute), assumptions, citations, lower, upper, none);

    private static StatisticDefinition Paired(
        string name, string title, string symbol, string what, Func<PairedContrast, double, Estimate> compute,
        string[] assumptions, string[] citations, double lower = double.NegativeInfinity, double upper = double.PositiveInfinity, double none = 0) =>
        Entry(name, title, symbol, what, InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
            input => EntryParts.Paired(name, input, compute), assumptions, citations, lower, upper, none);

    private delegate Estimate OfPairs(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence);

    private static StatisticDefinition Pairs(
        string name, string title, string symbol, string what, OfPairs compute, string[] assumptions, string[] citations) =>
        Entry(name, title, symbol, what, InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
            input => EntryParts.Pairs(name, input, (before, after) => compute(before, after, input.Confidence)), assumptions, citations,
            double.NegativeInfinity, double.PositiveInfinity, 0);

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, Func<TidyInput, Estimate> compute,
        string[] assumptions, string[] citations, double lower, double upper, double none) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.EffectSize,
            What = what,
            Needs = needs,
            Direction = EffectDirection.PositiveWhenValuesRise,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Computation = StatisticDefinition.Single(compute),
        };
}
