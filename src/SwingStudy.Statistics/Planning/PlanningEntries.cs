using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Planning;

/// <summary>The catalogue entries of power and planning; they need settings and no table.</summary>
internal static class PlanningEntries
{
    private static readonly StatisticSetting Alpha = new("alpha", "two-sided level", 0.05, 1e-6, 0.5);
    private static readonly StatisticSetting Standardized = new("standardized-change", "true change in standard deviations of the differences", Least: -100, Most: 100) { Example = 0.5 };
    private static readonly StatisticSetting Icc = new("icc", "expected ICC(1,1)", Least: 0, Most: 0.999) { Example = 0.8 };
    private static readonly StatisticSetting Measurements = new("measurements", "measurements of each player", 2, 2, 1000, true);
    private static readonly StatisticSetting Replications = new("replications", "simulated studies", 1000, 2, 1_000_000, true);
    private static readonly StatisticSetting Least = new("least", "least number of sessions of a phase", 3, 1, 100, true);

    private static readonly StatisticSetting[] Noise =
    [
        new("session-sd", "standard deviation of session effects", Least: 0, Most: 1e6) { Example = 1 },
        new("swing-sd", "standard deviation of single swings", Least: 0, Most: 1e6) { Example = 2 },
        new("change-sd", "standard deviation of the true change over players", 0, 0, 1e6),
        new("swing-autocorrelation", "lag-1 autocorrelation of swings", 0, -0.99, 0.99),
        new("session-autocorrelation", "lag-1 autocorrelation of session effects", 0, -0.99, 0.99),
    ];

    private static readonly StatisticSetting[] Size =
    [
        new("players", "number of players", 1, 1, 1000, true),
        new("sessions", "sessions of each phase (pre-post), of the whole series otherwise", 12, 1, 200, true),
        new("swings", "swings of a session", 10, 1, 10_000, true),
        new("change", "true mean change, unit of the outcome", Least: -1e6, Most: 1e6) { Example = 2 },
    ];

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Power("power-paired-t", "Power of the paired t test", "Noncentral t with noncentrality d_z √n, both tails.", ["cohen-1988"],
            [Standardized, new("pairs", "number of pairs", Least: 2, Most: 1e6, IsWhole: true) { Example = 20 }, Alpha],
            input => [ResultRow.Of("power", PowerClosedForm.PairedT(Get(input, "standardized-change"), Whole(input, "pairs"), LevelOf(input)))]),
        Power("power-two-sample-t", "Power of the two-sample t test", "Noncentral t of the pooled test, both tails.", ["cohen-1988"],
            [
                new("standardized-difference", "true difference in common standard deviations", Least: -100, Most: 100) { Example = 0.5 },
                new("first", "size of the first group", Least: 2, Most: 1e6, IsWhole: true) { Example = 20 },
                new("second", "size of the second group", Least: 2, Most: 1e6, IsWhole: true) { Example = 20 },
                Alpha,
            ],
            input => [ResultRow.Of("power", PowerClosedForm.TwoSampleT(Get(input, "standardized-difference"), Whole(input, "first"), Whole(input, "second"), LevelOf(input)))]),
        Entry("pairs-needed", "Pairs that a paired t test needs for a power", "n", "Smallest number whose noncentral-t power reaches the power wanted.", ["cohen-1988"], double.PositiveInfinity,
            [Standardized, new("power", "power wanted", 0.8, 0.01, 0.9999), Alpha, new("one-sided", "1 for a one-sided test", 0, 0, 1, true)], Pairs),
        Power("power-pre-post-closed-form", "Power of a pre-post study, independent sessions", "Paired t test of players' changes, or the two-sample t test of one player's session means.", ["cohen-1988"],
            [.. Noise.Take(4), .. Size, Alpha, new("power", "power wanted, for the sessions needed", 0.8, 0.01, 0.9999)], PrePost),
        Power("power-pre-post", "Power of a pre-post study, simulated", "Share of simulated studies with p at or below alpha.", ["cohen-1988"],
            [.. Noise, .. Size, Alpha, Replications],
            input => PrePostPower.Simulate(NoiseOf(input), SizeOf(input), Get(input, "change"), new Xoshiro256(input.Seed), Count(input), LevelOf(input)) is { } planned
                ? Rows(planned) : ResultRow.None("one player with one session a phase leaves no degree of freedom")),
        Scheme("power-randomized-phase-start", "a drawn phase start", [Least], input => Fits(input, 2) ? PhaseStartScheme.WithAtLeast(Whole(input, "sessions"), Whole(input, "least")) : null),
        Scheme("power-randomized-phase-change", "drawn phase changes (withdrawal)", [Least, new("phases", "number of phases", 4, 2, 20, true)],
            input => Fits(input, Whole(input, "phases")) ? new PhaseChangeScheme(Whole(input, "sessions"), Whole(input, "phases"), Whole(input, "least")) : null),
        Scheme("power-randomized-blocked", "conditions in drawn order within blocks of two", [],
            input => Whole(input, "sessions") is var n && n % 2 == 0 && n <= 28 ? new BlockedScheme(n / 2) : null),
        Scheme("power-randomized-alternating", "alternating conditions, as many of one as of the other", [new("longest-run", "most sessions of one condition in a row", 2, 1, 100, true)],
            input => Whole(input, "sessions") is var n && n % 2 == 0 && n <= 100 ? new AlternatingScheme(n / 2, n / 2, Whole(input, "longest-run")) : null),
        Entry("icc-plan", "Players needed for an interval of ICC(1,1) of a width", "n", "Bonett's formula, and the smallest number whose exact interval is no wider.", ["bonett-2002"], double.PositiveInfinity,
            [Icc, Measurements, new("width", "width wanted", Least: 0.01, Most: 0.99) { Example = 0.2 }], PlanIcc),
        Entry("decision-forecast", "Further swings or sessions until a change is decided", "w", "Half-width of the interval from known noise; deciding means that it no longer holds the limit.", ["searle-1971"], double.PositiveInfinity,
            [
                .. Noise.Take(2),
                Size[3],
                new("limit", "value to decide against, unit of the outcome", 0, -1e6, 1e6),
                .. new[] { "sessions-before", "sessions-after" }.Select(name => new StatisticSetting(name, "sessions of the phase", 3, 1, 1000, true)),
                .. new[] { "swings-before", "swings-after" }.Select(name => new StatisticSetting(name, "swings of the phase in all", 30, 1, 1e6, true)),
                Size[2],
            ],
            Forecast),
    ];

    private static IReadOnlyList<NamedEstimate> Pairs(TidyInput input)
    {
        double change = Get(input, "standardized-change"), power = Get(input, "power"), alpha = LevelOf(input);
        var twoSided = Get(input, "one-sided") == 0;
        if (!(power > alpha) || change == 0 || (!twoSided && change < 0))
            return ResultRow.None("needs a power above alpha and a change that is not zero, above zero for a one-sided test");
        return PairsNeeded.For(change, power, alpha, twoSided) is { } needed
            ? [ResultRow.Of("pairs", needed.Pairs), ResultRow.Of("exact", needed.Exact), ResultRow.Of("power", PairsNeeded.Power(change, needed.Pairs, alpha, twoSided))]
            : ResultRow.None("more than a thousand million pairs would be needed");
    }

    private static IReadOnlyList<NamedEstimate> PrePost(TidyInput input)
    {
        var (noise, size) = (NoiseOf(input), SizeOf(input));
        return
        [
            ResultRow.Of("power", PrePostPower.ClosedForm(noise, size, Get(input, "change"), LevelOf(input)), "the design leaves no degree of freedom, or there is no noise"),
            ResultRow.Of("sessions-needed", PrePostPower.SessionsNeeded(noise, size.Players, size.Swings, Get(input, "change"), Get(input, "power"), LevelOf(input)), "200 sessions a phase are not enough, or there is no noise"),
        ];
    }

    private static IReadOnlyList<NamedEstimate> PlanIcc(TidyInput input)
    {
        var plan = IccPlan.ForWidth(Get(input, "icc"), Whole(input, "measurements"), Get(input, "width"), input.Confidence);
        return
        [
            ResultRow.Of("players", plan.Players),
            ResultRow.Of("players-corrected-for-pairs", plan.PlayersPairCorrected),
            ResultRow.Of("players-by-exact-interval", plan.PlayersByExactInterval),
            ResultRow.Of("before-rounding", plan.Raw),
        ];
    }

    private static IReadOnlyList<NamedEstimate> Forecast(TidyInput input)
    {
        var forecast = DecisionForecast.Of(
            Get(input, "change"), Get(input, "limit"), NoiseOf(input), new PhaseCounts(Whole(input, "sessions-before"), Whole(input, "swings-before")),
            new PhaseCounts(Whole(input, "sessions-after"), Whole(input, "swings-after")), Whole(input, "swings"), input.Confidence);
        return
        [
            ResultRow.Of("half-width", forecast.HalfWidth, note: forecast.IsDecided ? "decided" : "not decided yet"),
            ResultRow.Of("half-width-with-endless-swings", forecast.Floor),
            ResultRow.Of("more-swings", forecast.MoreSwings, "swings alone, up to 1000, cannot decide it"),
            ResultRow.Of("more-sessions", forecast.MoreSessions, "1000 further sessions do not decide it"),
        ];
    }

    private static IReadOnlyList<NamedEstimate> Rows(PlannedPower planned) =>
    [
        ResultRow.Of("power", planned.Power),
        ResultRow.Of("monte-carlo-error-of-power", planned.MonteCarloError),
        ResultRow.Of("smallest-possible-p", planned.SmallestPossibleP, "none: a t test"),
        ResultRow.Of("mean-estimate", planned.MeanEstimate),
        ResultRow.Of("standard-error-of-estimate", planned.StandardErrorOfEstimate),
        ResultRow.Of("mean-half-width", planned.MeanHalfWidth, "a randomization test gives no interval"),
    ];

    private static StatisticDefinition Scheme(string name, string what, StatisticSetting[] settings, Func<TidyInput, AssignmentScheme?> schemeOf) =>
        Power(name, $"Power of the randomization test of {what}, simulated", "Share of simulated studies whose exact randomization test has p at or below alpha; players are joined by Edgington's additive method.",
            ["ferron-ware-1995"], [.. Noise, .. Size, .. settings, Alpha, Replications],
            input => schemeOf(input) is { Count: <= 20_000 } scheme
                ? Rows(RandomizedDesignPower.ByScheme(
                    NoiseOf(input), scheme, Whole(input, "players"), Whole(input, "swings"), Get(input, "change"), new Xoshiro256(input.Seed), Count(input), LevelOf(input)))
                : ResultRow.None("so many sessions do not fit this scheme, or it has more than 20000 assignments"));

    private static StatisticDefinition Power(
        string name, string title, string what, string[] citations, StatisticSetting[] settings, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) =>
        Entry(name, title, "1 − β", what, citations, 1, settings, compute);

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, string[] citations, double upper, StatisticSetting[] settings,
        Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Planning,
            What = what,
            Needs = InputColumns.None,
            Direction = EffectDirection.None,
            LowerBound = 0,
            UpperBound = upper,
            Assumptions = ["Errors are normally distributed.", "The settings are those of the study to come."],
            CitationKeys = citations,
            Settings = settings,
            Computation = compute,
        };

    private static bool Fits(TidyInput input, int phases) => Whole(input, "sessions") >= phases * Whole(input, "least");

    private static NoiseModel NoiseOf(TidyInput input) => new()
    {
        Session = Get(input, "session-sd"),
        Swing = Get(input, "swing-sd"),
        ChangeBetweenPlayers = input.Setting("change-sd", 0),
        SwingAutocorrelation = input.Setting("swing-autocorrelation", 0),
        SessionAutocorrelation = input.Setting("session-autocorrelation", 0),
    };

    private static StudySize SizeOf(TidyInput input) =>
        new() { Players = Whole(input, "players"), Sessions = Whole(input, "sessions"), Swings = Whole(input, "swings") };

    private static double LevelOf(TidyInput input) => input.Setting("alpha", 0.05);

    private static int Count(TidyInput input) => (int)input.Setting("replications", 1000);

    private static int Whole(TidyInput input, string name) => (int)Get(input, name);

    private static double Get(TidyInput input, string name) => input.Settings.TryGetValue(name, out var given)
        ? given
        : All!.SelectMany(definition => definition.Settings).First(setting => setting.Name == name && setting.Default is not null).Default!.Value;
}
