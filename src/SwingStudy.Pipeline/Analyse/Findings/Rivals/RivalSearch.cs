namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Looks for what could explain a change otherwise, or limits what can be said. One file a rival; they do not know the verdict.</summary>
internal static class RivalSearch
{
    private static readonly Func<ComparedPlayer, IEnumerable<Caveat>>[] All =
    [
        ChangedConditions.Find,
        ChangedSensor.Find,
        DriftedPlates.Find,
        RunningClocks.Find,
        TrendBefore.Find,
        UnconvincedDraw.Find,
        OrderInSession.Find,
        UnequalExclusions.Find,
        SharedDay.Find,
        FewData.Find,
        WeakDesign.Find,
    ];

    /// <summary>The caveats of a comparison, those that forbid support first.</summary>
    public static IReadOnlyList<Caveat> Of(ComparedPlayer player) => [.. All.SelectMany(find => find(player)).OrderByDescending(caveat => caveat.ForbidsSupport)];
}
