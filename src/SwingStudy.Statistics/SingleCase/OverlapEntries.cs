using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>The catalogue entries of non-overlap between two phases and of monotone trend.</summary>
internal static class OverlapEntries
{
    private const string Exchangeable = "Values of a phase are exchangeable: no trend and no carry-over from swing to swing.";
    private const string InOrder = "Rows of a phase stand in order of time.";
    private static readonly StatisticSetting LowerIsBetter = new("lower-is-better", "1 when smaller values are the improvement", 0, 0, 1, true);

    private delegate Estimate OfPhases(double[] before, double[] after, Improvement improvement, double confidence);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Phases(NonOverlapOfAllPairs.Method, "Non-overlap of all pairs", "NAP", "Share of pairs of a value before and one after in which the later one is better, ties half.",
            [Exchangeable], ["parker-vannest-2009", "hanley-mcneil-1982", "newcombe-2006"], 0, 1, 0.5,
            (a, b, improvement, confidence) => NonOverlapOfAllPairs.Of(a, b, improvement, confidence).Estimate),
        Phases(PhaseOverlap.PndMethod, "Percentage of non-overlapping data", "PND", "Share of later values better than the best earlier one.",
            [Exchangeable, "The best earlier value is not a misread: this one value decides."], ["scruggs-1987"], 0, 1, null,
            (a, b, improvement, _) => PhaseOverlap.PercentageOfNonOverlappingData(a, b, improvement)),
        Phases(PhaseOverlap.PemMethod, "Percentage exceeding the median", "PEM", "Share of later values better than the earlier median, ties half.",
            [Exchangeable], ["ma-2006"], 0, 1, 0.5, (a, b, improvement, _) => PhaseOverlap.PercentageExceedingMedian(a, b, improvement)),
        Phases(PhaseOverlap.PandMethod, "Percentage of all non-overlapping data", "PAND", "Share of all values that can stay when the fewest are removed to end overlap.",
            [Exchangeable], ["parker-2007"], 0, 1, null, (a, b, improvement, _) => PhaseOverlap.PercentageOfAllNonOverlappingData(a, b, improvement)),
        Phases(PhaseOverlap.IrdMethod, "Improvement rate difference, balanced robust", "IRD", "1 − (m + n)²/(2mn) · (1 − PAND).",
            [Exchangeable], ["parker-2011-review"], double.NegativeInfinity, 1, 0, (a, b, improvement, _) => PhaseOverlap.RobustImprovementRateDifference(a, b, improvement)),
        Phases(TauU.AgainstPhaseMethod, "Tau of after against before", "τ(AB)", "(improved − worse pairs)/(mn); equals 2 NAP − 1.",
            [Exchangeable], ["parker-2011-tau-u"], -1, 1, 0, (a, b, improvement, _) => TauU.Of(a, b, improvement).AgainstPhase),
        Phases(TauU.MinusTrendAMethod, "Tau-U, baseline trend taken off", "τ-U", "(S(AB) − S(A))/(mn); can leave [−1, 1].",
            [InOrder], ["parker-2011-tau-u"], double.NegativeInfinity, double.PositiveInfinity, 0, (a, b, improvement, _) => TauU.Of(a, b, improvement).MinusTrendA),
        Phases(TauU.PlusTrendBMinusTrendAMethod, "Tau-U, trend after added and baseline trend taken off", "τ-U", "(S(AB) + S(B) − S(A)) divided by all pairs of the series.",
            [InOrder], ["parker-2011-tau-u"], -1, 1, 0, (a, b, improvement, _) => TauU.Of(a, b, improvement).PlusTrendBMinusTrendA),
        Phases(TauU.PlusTrendBMethod, "Tau-U, trend after added", "τ-U", "(S(AB) + S(B)) divided by the pairs across phases and inside the later one.",
            [InOrder], ["parker-2011-tau-u"], -1, 1, 0, (a, b, improvement, _) => TauU.Of(a, b, improvement).PlusTrendB),
        Phases(TauU.TauBAgainstPhaseMethod, "Kendall's tau-b of the values against the phase", "τ_b", "S(AB) over the geometric mean of the pairs untied in value and in phase.",
            [Exchangeable], ["kendall-1970"], -1, 1, 0, (a, b, improvement, _) => TauU.Of(a, b, improvement).TauBAgainstPhase),
        Phases(BaselineCorrectedTau.Method, "Baseline-corrected tau", "τ_BC", "Tau-b against the phase after the Theil–Sen line of the baseline is taken off the whole series; positive when values rise.",
            [InOrder, "The baseline trend would have gone on."], ["tarlow-2017"], -1, 1, 0, (a, b, _, _) => BaselineCorrectedTau.Of(a, b).Corrected),
        Trend(MannKendallTrend.TauBMethod, "Mann–Kendall trend as Kendall's tau-b", "τ_b", "S over the geometric mean of untied pairs; p by the normal approximation with continuity correction.",
            ["Values are independent: a series with carry-over has a larger variance than this."], ["mann-1945", "kendall-1970"], -1, 1, 0,
            (times, values, _) => MannKendallTrend.Of(times, values).TauB),
        Trend(TheilSenLine.SlopeMethod, "Theil–Sen slope", "b", "Median of all pairwise slopes; Sen's interval.",
            ["The trend is a straight line."], ["sen-1968"], double.NegativeInfinity, double.PositiveInfinity, 0,
            (times, values, confidence) => TheilSenLine.Fit(times, values, confidence).Slope),
        Trend(TheilSenLine.InterceptMethod, "Theil–Sen intercept", "a", "Median of value − slope · time.",
            ["The trend is a straight line."], ["sen-1968"], double.NegativeInfinity, double.PositiveInfinity, null,
            (times, values, confidence) => TheilSenLine.Fit(times, values, confidence).Intercept),
    ];

    private static StatisticDefinition Phases(
        string name, string title, string symbol, string what, string[] assumptions, string[] citations, double lower, double upper, double? none, OfPhases compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.SingleCase,
            What = what,
            Needs = InputColumns.Value | InputColumns.Condition,
            Direction = EffectDirection.PositiveWhenValuesRise,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Settings = name == BaselineCorrectedTau.Method ? [] : [LowerIsBetter],
            Computation = StatisticDefinition.Single(input => EntryParts.TwoConditions(name, input, (before, after) => compute(
                before, after, input.Setting("lower-is-better", 0) == 0 ? Improvement.Increase : Improvement.Decrease, input.Confidence))),
        };

    private static StatisticDefinition Trend(
        string name, string title, string symbol, string what, string[] assumptions, string[] citations, double lower, double upper, double? none,
        Func<double[], double[], double, Estimate> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.SingleCase,
            What = what,
            Needs = InputColumns.Value | InputColumns.Predictor,
            Direction = EffectDirection.PositiveWhenValuesRise,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Computation = StatisticDefinition.Single(input => compute([.. input.Predictors!], [.. input.Values], input.Confidence)),
        };
}
