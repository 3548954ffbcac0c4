using SwingStudy.Domain.Variables;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;
using SwingStudy.Statistics.SingleCase;

namespace SwingStudy.Pipeline.Analyse.Trends;

/// <summary>The single-case terms of one player's series: session means are its points, but for the order of swings within sessions.</summary>
internal static class PlayerSeries
{
    /// <summary>All terms of one outcome and contrast.</summary>
    /// <param name="values">Counted values of both phases, in order of time.</param>
    /// <param name="data">The same, session by session.</param>
    /// <param name="series">The sessions from the first to the last compared one, those of other phases between them too.</param>
    /// <param name="change">The change judged on them.</param>
    /// <param name="outcome">The outcome.</param>
    /// <param name="confidence">Level of intervals.</param>
    public static IEnumerable<TrendTerm> Terms(IReadOnlyList<CountedValue> values, ChangeData data, IReadOnlyList<PhaseSession> series, HonestChange change, OutcomeSetting outcome, double confidence)
    {
        var (before, after) = (Means(data.Before), Means(data.After));
        var improvement = outcome.Better == Better.Lower ? Improvement.Decrease : Improvement.Increase;
        yield return new TrendTerm(TrendTerm.BaselineTrend, outcome.Unit, BaselineSlope.Of(data, change, confidence));
        yield return new TrendTerm(TrendTerm.BaselineTrendMedian, outcome.Unit, MedianSlope(before, confidence));
        var steady = TrendFreeChange.Of(series, change, confidence);
        yield return new TrendTerm(TrendTerm.WithinPhases, outcome.Unit, steady.Slope);
        yield return new TrendTerm(TrendTerm.ChangeBeyondTrend, outcome.Unit, steady.Left);
        var fit = Segmented(before, after, confidence);
        yield return new TrendTerm(TrendTerm.LevelChange, outcome.Unit, Named(fit.LevelChange, "level-change"));
        yield return new TrendTerm(TrendTerm.SlopeChange, outcome.Unit, Named(fit.SlopeChange, "slope-change"));
        yield return new TrendTerm(TrendTerm.Lag1, "1", Lag1(before, after));
        yield return new TrendTerm(TrendTerm.NonOverlap, "1", NonOverlapOfAllPairs.Of(before, after, improvement, confidence).Estimate);
        yield return new TrendTerm(TrendTerm.TauU, "1", TauU.Of(before, after, improvement).MinusTrendA);
        yield return new TrendTerm(TrendTerm.BaselineCorrectedTau, "1", CorrectedTau(before, after));
        yield return new TrendTerm(TrendTerm.OrderInSession, outcome.Unit, Order(values, confidence));
    }

    private static double[] Means(IReadOnlyList<double[]> sessions) => [.. sessions.Select(session => Summary.Of(session).Mean!.Value)];

    private static SegmentedFit Segmented(double[] before, double[] after, double confidence) =>
        SegmentedRegression.OrdinaryLeastSquares([.. before, .. after], before.Length, confidence);

    private static Estimate Named(Estimate term, string suffix) => term with { Method = $"{SegmentedRegression.OlsMethod}-{suffix}" };

    private static Estimate MedianSlope(double[] before, double confidence)
    {
        double[] times = [.. Enumerable.Range(1, before.Length).Select(i => (double)i)];
        var slope = TheilSenLine.Fit(times, before, confidence).Slope;
        var trend = MannKendallTrend.Of(times, before);
        return slope with { P = trend.PExact ?? trend.PWithContinuity };
    }

    private static Estimate Lag1(double[] before, double[] after)
    {
        if (before.Length == 0 || after.Length == 0)
            return Estimate.NotDefined(LagOneAutocorrelation.BiasCorrectedMethod, "needs sessions in both phases");
        var (a, b) = (Summary.Of(before), Summary.Of(after));
        double[] residuals = [.. before.Select(value => value - a.Mean!.Value), .. after.Select(value => value - b.Mean!.Value)];
        return LagOneAutocorrelation.BiasCorrected(residuals, coefficients: 2);
    }

    private static Estimate CorrectedTau(double[] before, double[] after) =>
        before.Length == 0 ? Estimate.NotDefined(BaselineCorrectedTau.Method, "needs a session before the change") : BaselineCorrectedTau.Of(before, after).Chosen;

    private static Estimate Order(IReadOnlyList<CountedValue> values, double confidence)
    {
        var sessions = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var value in values)
            sessions.TryAdd(value.Session, sessions.Count);
        return OrderSlope.Of(
            [.. values.Select(value => value.Order)], [.. values.Select(value => value.Value)], [.. values.Select(value => sessions[value.Session])], confidence);
    }
}
