using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Says what the planned comparisons show, player by player and over the study.</summary>
internal sealed class FindingStage : Stage<FindingSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "findings",
        Title = "Findings",
        Summary = "Says of every planned comparison whether the change exceeds noise and matters, with the reasons for and against.",
        Unit = UnitOfWork.Study,
        Inputs = [new("swings", Slice.WholeTable), new("flags", Slice.WholeTable), new("noise", Slice.WholeTable)],
        Outputs = ["findings"],
        CodeVersion = "1",
    };

    protected override FindingSettings SettingsOf(StudySetup setup) => FindingSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, FindingSettings settings) => table switch
    {
        "swings" => [.. CountedSwings.Columns.Concat(OutcomeSetting.Columns(settings.Outcomes)).Concat(settings.Conditions).Distinct(StringComparer.Ordinal)],
        "flags" => ExcludedValues.Columns,
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(FindingSettings settings, StageInput input)
    {
        var all = input.Rows("swings");
        var counted = new CountedSwings(all, input.Rows("flags"));
        var participants = all.Texts("participant").Select((participant, row) => (participant, row)).ToLookup(pair => pair.participant ?? "", pair => pair.row, StringComparer.Ordinal);
        var rowsOf = participants.OrderBy(group => group.Key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => all.Select([.. group]), StringComparer.Ordinal);
        var rows = new RowSetBuilder(input.Output("findings"));
        foreach (var outcome in settings.Outcomes.Where(outcome => outcome.IsNumeric))
        {
            var values = counted.Values(outcome.Name).ToLookup(value => value.Participant, StringComparer.Ordinal);
            foreach (var contrast in settings.Contrasts.Where(contrast => outcome.Contrasts.Contains(contrast.Name)))
            {
                var players = new List<(PlayerChange Change, Verdict Verdict)>();
                foreach (var (participant, swings) in rowsOf)
                {
                    var change = Judge(participant, [.. values[participant]], swings, outcome, contrast, input.Rows("noise"), settings);
                    players.Add((change, Judgement.Of(change, settings.Confidence)));
                    Add(rows, players[^1].Change, players[^1].Verdict, settings.Confidence);
                }

                if (outcome.IsPrimary && players.Count > 0)
                    Add(rows, outcome, contrast, StudyFinding.Of(outcome, contrast, players, settings.Confidence), players);
            }
        }

        return [rows.Build()];
    }

    private static PlayerChange Judge(
        string participant, IReadOnlyList<CountedValue> values, RowSet swings, OutcomeSetting outcome, ContrastSetting contrast, RowSet noise, FindingSettings settings)
    {
        var data = PhaseValues.Of(values, contrast);
        var pooled = PooledNoise.Of(PooledNoise.Sum(noise, outcome.Name, participant));
        var change = HonestChangeRule.Judge(data, pooled, outcome.Worthwhile ?? 0, settings.Confidence);
        double? before = data.Before.Count == 0 ? null : data.Before.Average(session => Summary.Of(session).Mean!.Value);
        return new PlayerChange(participant, outcome, contrast, change, before, Caveats.Of(swings, values, change, contrast, settings));
    }

    private static void Add(RowSetBuilder rows, PlayerChange player, Verdict verdict, double confidence) => rows.Add(
        ("scope", "player"),
        ("participant", player.Participant),
        ("outcome", player.Outcome.Name),
        ("contrast", player.Contrast.Name),
        ("verdict", VerdictWords.Of(verdict)),
        ("statement", PlayerStatement.Of(player, verdict, confidence)),
        ("reasons", Lines(Reasons(player, verdict, confidence))));

    private static IEnumerable<string> Reasons(PlayerChange player, Verdict verdict, double confidence)
    {
        if (verdict == Verdict.CannotTell)
            yield return $"{Word.Of(player.Change.CannotTell)}: {CannotTellText.Of(player.Change)}";
        else if (player.Change.ExceedsNoise != true)
            yield return "within-noise: the interval includes no change at all";
        else if (player.Outcome.Worthwhile is not null && !(player.ProbabilityWorthwhile >= confidence))
            yield return "worthwhile-unsure: the change exceeds noise, but may be smaller than the smallest worthwhile one";
        else if (player.Outcome.Worthwhile is null)
            yield return "worthwhile-unstated: the protocol names no smallest worthwhile change";
        if (player.Change.CanAnswer == false && player.Outcome.Worthwhile is not null && verdict != Verdict.CannotTell)
            yield return "design-too-coarse: even a change of the smallest worthwhile size could not be told from noise with these sessions and swings";
        foreach (var caveat in player.Caveats)
            yield return caveat.ToString();
    }

    private static void Add(
        RowSetBuilder rows, OutcomeSetting outcome, ContrastSetting contrast, StudyFinding finding, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> players) => rows.Add(
        ("scope", "study"),
        ("outcome", outcome.Name),
        ("contrast", contrast.Name),
        ("verdict", VerdictWords.Of(finding.Verdict)),
        ("statement", finding.Statement),
        ("reasons", Lines(players.Select(player => $"{player.Change.Participant}: {VerdictWords.Of(player.Verdict)}"))));

    /// <summary>One reason a line; missing when there is none, since an empty text is not told from a missing one by every reader.</summary>
    private static string? Lines(IEnumerable<string> reasons) => string.Join('\n', reasons) is { Length: > 0 } text ? text : null;
}
