using NodaTime;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Reporting.Rows;

/// <summary>The rows that a report shows, as they stand in the tables.</summary>
public sealed record ReportTables
{
    private const string SwingId = "swing_id";
    private const string Participant = "participant";

    /// <summary>Values of each outcome of the protocol, by variable; swings without a value are left out.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<ReportedSwing>> Swings { get; init; }

    /// <summary>Flags.</summary>
    public required IReadOnlyList<FlagRow> Flags { get; init; }

    /// <summary>Effects.</summary>
    public required IReadOnlyList<EffectRow> Effects { get; init; }

    /// <summary>Reliability.</summary>
    public required IReadOnlyList<ReliabilityRow> Reliability { get; init; }

    /// <summary>Findings.</summary>
    public required IReadOnlyList<FindingRow> Findings { get; init; }

    /// <summary>Estimates over players.</summary>
    public required IReadOnlyList<GroupRow> Group { get; init; }

    /// <summary>Methods of the terms of players' series.</summary>
    public required IReadOnlyList<string> SeriesMethods { get; init; }

    /// <summary>Mean curves of phases.</summary>
    public IReadOnlyList<CurveMeanRow> CurveMeans { get; init; } = [];

    /// <summary>Curve tests.</summary>
    public IReadOnlyList<CurveTestRow> CurveTests { get; init; } = [];

    /// <summary>Vertical force of both feet, swing by swing.</summary>
    public IReadOnlyList<SwingCurveRow> SwingCurves { get; init; } = [];

    /// <summary>Events of swings.</summary>
    public IReadOnlyList<SwingEventRow> SwingEvents { get; init; } = [];

    /// <summary>Method words of all results, each once, without what is said after a semicolon.</summary>
    public IReadOnlyList<string> MethodWords =>
    [
        .. Effects.Select(row => row.Method).Concat(Reliability.Select(row => row.Method)).Concat(Group.Select(row => row.Method)).Concat(SeriesMethods)
            .Concat(CurveMeans.Select(row => row.Method)).Concat(CurveTests.Select(row => row.Method))
            .Select(method => method.Split(';')[0]).Where(word => word.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    /// <summary>Captures by the word that says how they were linked, or why not.</summary>
    public required IReadOnlyDictionary<string, int> Links { get; init; }

    /// <summary>Captures that belong to no swing, by the word that says why.</summary>
    public required IReadOnlyDictionary<string, int> Unlinked { get; init; }

    /// <summary>Captures that belong to a swing.</summary>
    public required int LinkedCaptures { get; init; }

    /// <summary>All swings, practice swings among them.</summary>
    public required int AllSwings { get; init; }

    /// <summary>Practice swings.</summary>
    public required int PracticeSwings { get; init; }

    /// <summary>Swings at a ball that count in the analysis.</summary>
    public required int IncludedSwings { get; init; }

    /// <summary>Reads the newest version of the tables of a study; a table that does not exist yet has no rows.</summary>
    /// <param name="store">The tables.</param>
    /// <param name="dictionary">The variables.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="mask">What a blind reader sees of rows; null where nobody is blind. Curves and events of swings are left out for the blind.</param>
    public static ReportTables Read(TableStore store, VariableDictionary dictionary, Protocol protocol, Func<RowSet, RowSet>? mask = null)
    {
        IEnumerable<RowSet> Rows(TableDefinition definition, IReadOnlyList<string>? columns) => mask is null ? AllRows(store, definition, columns) : AllRows(store, definition, columns).Select(mask);
        var outcomes = protocol.Outcomes.Select(outcome => outcome.Variable).Where(name => dictionary[name].Column.Kind == ColumnKind.Number).ToList();
        string[] swingColumns = [SwingId, Participant, "session", "phase", "struck_at", "is_practice", "included", .. outcomes];
        return From(
            outcomes,
            Rows(StudyTables.Swings(dictionary), swingColumns),
            Rows(StudyTables.Flags, null),
            Rows(StudyTables.Effects, null),
            Rows(StudyTables.Reliability, null),
            Rows(StudyTables.Findings, null),
            Rows(StudyTables.Links, [SwingId, "method"]),
            Rows(StudyTables.GroupEffects, null),
            Rows(StudyTables.Trends, ["method"])) with
        {
            CurveMeans = [.. Rows(StudyTables.CurveMeans, null).SelectMany(CurveRows.MeansOf)],
            CurveTests = [.. Rows(StudyTables.CurveTests, null).SelectMany(CurveRows.TestsOf)],
            SwingCurves = mask is null ? MovementRows.Curves(store) : [],
            SwingEvents = mask is null ? MovementRows.Events(store) : [],
        };
    }

    /// <summary>Takes rows of the tables, in any number of parts.</summary>
    public static ReportTables From(
        IReadOnlyList<string> outcomes,
        IEnumerable<RowSet> swings,
        IEnumerable<RowSet> flags,
        IEnumerable<RowSet> effects,
        IEnumerable<RowSet> reliability,
        IEnumerable<RowSet> findings,
        IEnumerable<RowSet> links,
        IEnumerable<RowSet>? groupEffects = null,
        IEnumerable<RowSet>? trends = null)
    {
        List<FlagRow> flagRows = [.. flags.SelectMany(FlagsOf)];
        var sets = swings.ToList();
        var linkRows = links.SelectMany(set => set.Texts("method").Zip(set.Texts(SwingId))).ToList();
        return new()
        {
            Swings = outcomes.ToDictionary(outcome => outcome, outcome => SwingsOf(outcome, sets, flagRows), StringComparer.Ordinal),
            Flags = flagRows,
            Effects = [.. effects.SelectMany(EffectsOf)],
            Reliability = [.. reliability.SelectMany(ReliabilityOf)],
            Findings = [.. findings.SelectMany(FindingsOf)],
            Group = [.. (groupEffects ?? []).SelectMany(GroupOf)],
            SeriesMethods = [.. (trends ?? []).SelectMany(set => set.Texts("method")).OfType<string>().Distinct(StringComparer.Ordinal)],
            Links = CountsOf(linkRows.Select(row => row.First)),
            Unlinked = CountsOf(linkRows.Where(row => row.Second is null).Select(row => row.First)),
            LinkedCaptures = linkRows.Count(row => row.Second is not null),
            AllSwings = sets.Sum(set => set.Count),
            PracticeSwings = sets.Sum(set => set.Booleans("is_practice").Count(practice => practice == true)),
            IncludedSwings = sets.Sum(set => set.Booleans("included").Zip(set.Booleans("is_practice")).Count(pair => pair is { First: true, Second: not true })),
        };
    }

    private static IEnumerable<RowSet> AllRows(TableStore store, TableDefinition definition, IReadOnlyList<string>? columns)
    {
        var table = store.Table(definition);
        return table.CurrentVersion < 0 ? [] : table.Read(columns: columns);
    }

    private static IReadOnlyList<ReportedSwing> SwingsOf(string outcome, List<RowSet> sets, List<FlagRow> flags)
    {
        var excluded = ExcludedOf(outcome, flags);
        return
        [
            .. sets.SelectMany(set =>
            {
                var (ids, people, sessions, phases) = (set.Texts(SwingId), set.Texts(Participant), set.Texts("session"), set.Texts("phase"));
                var (times, practice, included, values) = (set.Instants("struck_at"), set.Booleans("is_practice"), set.Booleans("included"), set.Numbers(outcome));
                return Enumerable.Range(0, set.Count).Where(i => !double.IsNaN(values[i]) && practice[i] != true).Select(i => new ReportedSwing(
                    ids[i] ?? "", people[i] ?? "", sessions[i] ?? "", phases[i], MomentOf(times[i]), values[i], included[i] == true && !excluded.Contains(ids[i])));
            }).OrderBy(swing => swing.Participant, StringComparer.Ordinal).ThenBy(swing => swing.StruckAt).ThenBy(swing => swing.SwingId, StringComparer.Ordinal),
        ];
    }

    /// <summary>Swings whose value of the outcome does not count: by the newest decision about it, without one by any rule.</summary>
    private static HashSet<string?> ExcludedOf(string outcome, List<FlagRow> flags) =>
    [
        .. flags.Where(flag => flag.Variable == outcome).GroupBy(flag => flag.SwingId)
            .Where(group => (group.LastOrDefault(flag => flag.Rule == FlagRow.Decision) is { } decision ? [decision] : group.AsEnumerable())
                .Any(flag => flag.Action == FlagRow.ExcludeValue))
            .Select(group => group.Key),
    ];

    private static Dictionary<string, int> CountsOf(IEnumerable<string?> words) =>
        words.GroupBy(word => word ?? "").ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);

    private static Instant? MomentOf(long millis) => millis == InstantColumn.MissingMillis ? null : Instant.FromUnixTimeMilliseconds(millis);

    private static IEnumerable<FlagRow> FlagsOf(RowSet set)
    {
        var (ids, people, variables, rules, actions) =
            (set.Texts(SwingId), set.Texts(Participant), set.Texts("variable"), set.Texts("rule"), set.Texts("action"));
        return Enumerable.Range(0, set.Count).Select(i => new FlagRow(ids[i], people[i] ?? "", variables[i], rules[i] ?? "", actions[i] ?? ""));
    }

    private static IEnumerable<EffectRow> EffectsOf(RowSet set) => Enumerable.Range(0, set.Count).Select(i => new EffectRow(
        set.Texts(Participant)[i] ?? "",
        set.Texts("outcome")[i] ?? "",
        set.Texts("contrast")[i] ?? "",
        set.Texts("measure")[i] ?? "",
        set.Numbers("estimate")[i],
        set.Numbers("ci_low")[i],
        set.Numbers("ci_high")[i],
        set.Numbers("p")[i],
        set.Integers("n_from")[i],
        set.Integers("n_to")[i],
        set.Integers("sessions_from")[i],
        set.Integers("sessions_to")[i],
        set.Texts("unit")[i],
        set.Texts("method")[i] ?? "",
        set.Booleans("planned")[i] == true,
        set.Texts("undefined")[i]));

    private static IEnumerable<ReliabilityRow> ReliabilityOf(RowSet set) => Enumerable.Range(0, set.Count).Select(i => new ReliabilityRow(
        set.Texts("outcome")[i] ?? "",
        set.Texts("level")[i] ?? "",
        set.Texts("coefficient")[i] ?? "",
        set.Numbers("estimate")[i],
        set.Numbers("ci_low")[i],
        set.Numbers("ci_high")[i],
        set.Integers("n")[i],
        set.Texts("unit")[i],
        set.Texts("method")[i] ?? "",
        set.Texts("undefined")[i]));

    private static IEnumerable<FindingRow> FindingsOf(RowSet set) => Enumerable.Range(0, set.Count).Select(i => new FindingRow(
        set.Texts("scope")[i] ?? "",
        set.Texts(Participant)[i],
        set.Texts("outcome")[i],
        set.Texts("contrast")[i],
        set.Texts("basis")[i] ?? FindingRow.PlannedBasis,
        set.Texts("verdict")[i] ?? "",
        set.Texts("statement")[i] ?? "",
        [.. (set.Texts("reasons")[i] ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Reason.Parse)]));

    private static IEnumerable<GroupRow> GroupOf(RowSet set) => Enumerable.Range(0, set.Count).Select(i => new GroupRow(
        set.Texts("outcome")[i] ?? "",
        set.Texts("contrast")[i] ?? "",
        set.Texts("measure")[i] ?? "",
        set.Numbers("estimate")[i],
        set.Numbers("ci_low")[i],
        set.Numbers("ci_high")[i],
        set.Numbers("p")[i],
        set.Numbers("p_adjusted")[i],
        set.Numbers("i2")[i],
        set.Numbers("pi_low")[i],
        set.Numbers("pi_high")[i],
        set.Integers("n")[i],
        set.Texts("unit")[i],
        set.Texts("method")[i] ?? "",
        set.Booleans("planned")[i] == true,
        set.Texts("undefined")[i]));
}
