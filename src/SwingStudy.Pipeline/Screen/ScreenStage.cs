using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Pipeline.Screen.Rules;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Screen;

/// <summary>Applies the protocol's rules, then human decisions, and says of each swing whether it counts.</summary>
/// <remarks>
/// Nothing is deleted: <c>swings</c> keeps every value, <c>included</c> says whether the swing counts, and values that do not count are named in
/// <c>flags</c>. Decisions come last and win over rules; practice swings never count.
/// </remarks>
internal sealed class ScreenStage : Stage<ScreenSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "screen",
        Title = "Screen",
        Summary = "Applies the screening rules of the protocol, blind to phase, then human decisions, and says which swings count.",
        Unit = UnitOfWork.Participant,
        Inputs = [new("measures", Slice.SameParticipant), new("curve_measures", Slice.SameParticipant), new("links", Slice.SameParticipant), new("rejects", Slice.SameOriginals)],
        Outputs = ["flags", "swings"],
        Decisions = ["exclude", "include", Decision.Withdraw],
        CodeVersion = "4",
    };

    protected override ScreenSettings SettingsOf(StudySetup setup) => ScreenSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, ScreenSettings settings) => table switch
    {
        "curve_measures" => ["swing_id", "variable", "value", "reason"],
        "links" => ["capture_id", "swing_id", "method"],
        "rejects" => ["raw", "reason", "detail", "extent", "column", "variable", "capture_id"],
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(ScreenSettings settings, StageInput input)
    {
        var measures = InOrder(input.Rows("measures"));
        var (links, computed) = (input.Rows("links"), input.Rows("curve_measures"));
        var screened = ScreenedSwings.Of(measures, computed, settings.Variables);
        var impossible = settings.Rules.First(rule => rule.Rule == ImpossibleRule.Word);
        List<Flag> flags =
        [
            .. RejectedCells.Flags(input.Rows("rejects"), links, impossible)
                .OrderBy(flag => flag.Capture, StringComparer.Ordinal).ThenBy(flag => flag.Variable, StringComparer.Ordinal).ThenBy(flag => flag.Detail, StringComparer.Ordinal),
            .. NotComputed.Flags(computed, measures, settings.Outcomes),
            .. settings.Rules.SelectMany(rule => ByRule(screened, rule)),
        ];
        flags.AddRange(Decisions.Flags(input.Decisions("exclude"), input.Decisions("include"), links, measures.Texts("swing_id")));
        flags.AddRange(Withdrawn.Flags(input.Decisions(Decision.Withdraw), measures.Texts("swing_id")));
        var order = measures.Texts("swing_id").Select((id, i) => (id, i)).ToDictionary(pair => pair.id!, pair => pair.i, StringComparer.Ordinal);
        // A stable order: by swing, then as found (rejected cells, rules in the protocol's order, decisions by date).
        flags = [.. flags.OrderBy(flag => flag.Swing is null ? int.MaxValue : order.GetValueOrDefault(flag.Swing, int.MaxValue))];
        return [FlagRows(input.Output("flags"), input.Participant!, flags), SwingRows(input.Output("swings"), measures, flags)];
    }

    private static IEnumerable<Flag> ByRule(ScreenedSwings swings, RuleSetting rule) =>
        ScreeningCheck.All.First(check => check.Name == rule.Rule).Find(swings, rule)
            .OrderBy(hit => hit.Swing).ThenBy(hit => hit.Variable, StringComparer.Ordinal)
            .Select(hit => new Flag(swings.Ids[hit.Swing], null, hit.Variable, rule.Rule, rule.Action, hit.Detail, Flag.ByRule));

    private static RowSet InOrder(RowSet measures)
    {
        var (struck, sessions, sequence) = (measures.Instants("struck_at"), measures.Texts("session"), measures.Integers("sequence"));
        int[] order = [.. Enumerable.Range(0, measures.Count).OrderBy(i => struck[i]).ThenBy(i => sessions[i], StringComparer.Ordinal).ThenBy(i => sequence[i])];
        return measures.Select(order);
    }

    private static RowSet FlagRows(TableDefinition table, string participant, List<Flag> flags) => new(table,
    [
        new TextColumn([.. flags.Select(flag => flag.Swing)]),
        new TextColumn([.. flags.Select(flag => flag.Capture)]),
        new TextColumn([.. flags.Select(_ => participant)]),
        new TextColumn([.. flags.Select(flag => flag.Variable)]),
        new TextColumn([.. flags.Select(flag => flag.Rule)]),
        new TextColumn([.. flags.Select(flag => flag.Action)]),
        new TextColumn([.. flags.Select(flag => flag.Detail)]),
        new TextColumn([.. flags.Select(flag => flag.DecidedBy)]),
    ]);

    private static RowSet SwingRows(TableDefinition table, RowSet measures, List<Flag> flags)
    {
        var about = flags.Where(flag => flag is { Swing: not null } && (flag.Action == Flag.ExcludeSwing || (flag.Rule == Flag.Decided && flag.Variable is null)))
            .ToLookup(flag => flag.Swing!, StringComparer.Ordinal);
        var (ids, practice) = (measures.Texts("swing_id"), measures.Booleans("is_practice"));
        var included = new BooleanColumn([.. Enumerable.Range(0, measures.Count).Select(i => (bool?)(practice[i] != true && Counts(about[ids[i]!])))]);
        return new RowSet(table, [.. table.Columns.Select(column => column.Name == "included" ? included : measures[column.Name])]);
    }

    /// <summary>A player's own word comes first; then the newest decision about the swing; without one, any rule that excludes it.</summary>
    private static bool Counts(IEnumerable<Flag> about)
    {
        if (about.Any(flag => flag.Rule == Withdrawn.Rule))
            return false;
        var decided = about.LastOrDefault(flag => flag.Rule == Flag.Decided);
        return decided is null ? !about.Any() : decided.Action == Flag.Keep;
    }
}
