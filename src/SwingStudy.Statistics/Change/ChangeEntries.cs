using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.Statistics.Change;

/// <summary>The catalogue entries of a player's change.</summary>
internal static class ChangeEntries
{
    private const string Unknown = "unknown from these data and settings";

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
                new("smallest-worthwhile", "smallest worthwhile change, unit of the values", 0, 0),
                new("session-sd", "the study's standard deviation between sessions", Least: 0),
                new("session-df", "degrees of freedom of session-sd", 10, ChangeNoise.LeastDegrees, 1e9),
                new("swing-sd", "the study's standard deviation between swings", Least: 0),
                new("swing-df", "degrees of freedom behind swing-sd", 10, 1, 1e9),
                new("lag-1", "the study's correlation of neighbouring swings", Least: -0.99, Most: 0.99),
            ],
            Computation = Judge,
        },
    ];

    private static IReadOnlyList<NamedEstimate> Judge(TidyInput input)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length > 0 && conditions.Max() > 1)
            return ResultRow.None($"needs exactly two conditions, got {conditions.Max() + 1}");
        var subjects = input.Subjects?.Distinct(StringComparer.Ordinal).Count() ?? 1;
        if (subjects > 1)
            return ResultRow.None($"judges one player at a time, got {subjects}");
        var noise = new StudyNoise
        {
            SessionStandardDeviation = input.Settings.TryGetValue("session-sd", out var session) ? session : null,
            SessionDegreesOfFreedom = input.Setting("session-df", 10),
            SwingStandardDeviation = input.Settings.TryGetValue("swing-sd", out var swing) ? swing : null,
            SwingDegreesOfFreedom = input.Setting("swing-df", 10),
            Lag1 = input.Settings.TryGetValue("lag-1", out var lag) ? lag : null,
        };
        var data = ChangeData.Of([.. input.Values], TidyInput.Index(input.Sessions!), conditions);
        return Rows(HonestChangeRule.Judge(data, noise, input.Setting("smallest-worthwhile", 0), input.Confidence));
    }

    private static IReadOnlyList<NamedEstimate> Rows(HonestChange change) =>
    [
        new("change", change.Estimate, change.CannotTell == CannotTell.No ? Limit(change.LimitedBy) : $"cannot tell: {Words(change.CannotTell)}"),
        ResultRow.Of("smallest-detectable-change", change.SmallestDetectableChange, Unknown),
        ResultRow.Of("smallest-worthwhile-change", change.SmallestWorthwhileChange),
        Answer("exceeds-noise", change.ExceedsNoise),
        Answer("reaches-worthwhile", change.ReachesWorthwhile),
        Answer("design-can-answer", change.CanAnswer),
        ResultRow.Of("probability-above-worthwhile", change.ProbabilityAboveWorthwhile, Unknown),
        ResultRow.Of("probability-below-minus-worthwhile", change.ProbabilityBelowWorthwhile, Unknown),
        ResultRow.Of("swing-sd", change.SwingStandardDeviation, Unknown),
        ResultRow.Of("session-sd", change.SessionStandardDeviation, Unknown),
        ResultRow.Of("se-from-swings", change.SwingStandardError, Unknown),
        ResultRow.Of("se-from-sessions", change.SessionStandardError, Unknown),
        ResultRow.Of("lag-1-of-swings", change.Dependence.Lag1, "needs at least 5 pairs of neighbouring swings that vary"),
        ResultRow.Of("lag-1-used", change.Dependence.Shrunk),
        ResultRow.Of("sessions-before", change.SessionsBefore),
        ResultRow.Of("sessions-after", change.SessionsAfter),
        ResultRow.Of("swings-before", change.SwingsBefore),
        ResultRow.Of("swings-after", change.SwingsAfter),
        ResultRow.Of("shared-sessions", change.SharedSessions, note: change.SharedSessions > 0 ? "these hold swings of both phases" : null),
    ];

    private static NamedEstimate Answer(string question, bool? answer) =>
        ResultRow.Of(question, answer is { } known ? (known ? 1 : 0) : null, Unknown, answer is { } said ? (said ? "yes" : "no") : null);

    private static string? Limit(ChangeLimit? limit) => limit switch
    {
        ChangeLimit.Sessions => "limited by day-to-day noise",
        ChangeLimit.Swings => "limited by swing-to-swing noise",
        ChangeLimit.UnknownSessionVariance => "limited by the unknown session variance",
        _ => null,
    };

    private static string Words(CannotTell reason) => reason switch
    {
        CannotTell.PhaseWithoutSwings => "a phase has no swing",
        CannotTell.OneSessionWithoutSessionVariance => "a phase has one session and no session variance is known (session-sd)",
        CannotTell.SwingVarianceUnknown => "no session has a second swing and no swing variance is known (swing-sd)",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Nothing stands against a verdict."),
    };
}
