using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>The catalogue entries of a player's change.</summary>
internal static class ChangeEntries
{
    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        new()
        {
            Name = HonestChange.Method,
            Title = "One player's change against swing-to-swing and day-to-day noise",
            Symbol = "Δ",
            Family = StatisticFamily.Change,
            What = "Mean of session means after − before; SE from the player's own sessions and, when given, the study's session variance; t interval with Satterthwaite's degrees of freedom.",
            Needs = InputColumns.Value | InputColumns.Condition | InputColumns.Session,
            Direction = EffectDirection.PositiveWhenValuesRise,
            NullValue = 0,
            Assumptions =
            [
                "Session effects are independent and equally variable in both phases.",
                "Session means are normally distributed.",
                "Where the study's pooled session variance is used, this player's is the same.",
            ],
            CitationKeys = ["searle-1971", "satterthwaite-1946", "zieba-2010"],
            Settings =
            [
                "smallest-worthwhile: smallest worthwhile change, unit of the values (default 0)",
                "session-sd: the study's standard deviation between sessions (default unknown)",
                "session-df: degrees of freedom behind session-sd (default 10)",
                "swing-sd: the study's standard deviation between swings (default unknown)",
                "swing-df: degrees of freedom behind swing-sd (default 10)",
                "lag-1: the study's correlation of neighbouring swings (default unknown)",
            ],
            Computation = Judge,
        },
    ];

    private static Estimate Judge(TidyInput input)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length > 0 && conditions.Max() > 1)
            return Estimate.NotDefined(HonestChange.Method, $"needs exactly two conditions, got {conditions.Max() + 1}");
        var subjects = input.Subjects?.Distinct(StringComparer.Ordinal).Count() ?? 1;
        if (subjects > 1)
            return Estimate.NotDefined(HonestChange.Method, $"judges one player at a time, got {subjects}");
        var noise = new StudyNoise
        {
            SessionStandardDeviation = input.Settings.TryGetValue("session-sd", out var session) ? session : null,
            SessionDegreesOfFreedom = input.Setting("session-df", 10),
            SwingStandardDeviation = input.Settings.TryGetValue("swing-sd", out var swing) ? swing : null,
            SwingDegreesOfFreedom = input.Setting("swing-df", 10),
            Lag1 = input.Settings.TryGetValue("lag-1", out var lag) ? lag : null,
        };
        var data = ChangeData.Of([.. input.Values], TidyInput.Index(input.Sessions!), conditions);
        return HonestChangeRule.Judge(data, noise, input.Setting("smallest-worthwhile", 0), input.Confidence).Estimate;
    }
}
