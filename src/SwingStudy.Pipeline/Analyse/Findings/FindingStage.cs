using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse.Group;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Says what the comparisons show, player by player and over the study, and brings the players' effects together.</summary>
internal sealed class FindingStage : Stage<FindingSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "findings",
        Title = "Findings",
        Summary = "Says of every comparison whether the change exceeds noise and matters, with the reasons for and against, and brings the players together.",
        Unit = UnitOfWork.Study,
        Inputs =
        [
            new("swings", Slice.WholeTable), new("flags", Slice.WholeTable), new("noise", Slice.WholeTable), new("effects", Slice.WholeTable), new("trends", Slice.WholeTable),
            new("captures", Slice.WithValues), new("links", Slice.WholeTable), new("clocks", Slice.WholeTable),
        ],
        Outputs = ["group_effects", "findings"],
        CodeVersion = "8",
    };

    protected override FindingSettings SettingsOf(StudySetup setup) => FindingSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, FindingSettings settings) => table switch
    {
        "swings" => [.. CountedSwings.Columns.Concat(settings.NumericColumns).Concat(settings.Conditions).Distinct(StringComparer.Ordinal)],
        "flags" => ExcludedValues.Columns,
        "captures" => ["capture_id", .. OutcomeSetting.Columns(settings.Outcomes)],
        "links" => ["capture_id", "swing_id", "source", "device"],
        "clocks" => ["session", "source", "drift_ppm"],
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(FindingSettings settings, StageInput input)
    {
        var changes = new PlayerChanges(settings, input).All();
        var group = GroupSynthesis.Of(input.Rows("effects"), settings.Outcomes, settings.Contrasts, settings.Multiplicity, settings.Confidence).ToList();
        var rows = new RowSetBuilder(input.Output("findings"));
        var effects = new EstimateLookup(input.Rows("effects"), "measure");
        var judged = changes.ConvertAll(change => (Change: change, Verdict: Judgement.Of(change, settings.Confidence)));
        var mechanism = judged.Where(player => player.Change.Outcome.IsMechanism).ToLookup(player => (player.Change.Participant, player.Change.Contrast.Name));
        foreach (var comparison in judged.GroupBy(player => (player.Change.Outcome.Name, player.Change.Contrast.Name)).Select(group => group.ToList()))
        {
            List<PlayerChange> players = [.. comparison.Select(player => player.Change)];
            foreach (var (change, verdict) in comparison)
            {
                FindingRows.Add(rows, change, verdict,
                [
                    .. Evidence.Of(change, verdict, settings, effects),
                    .. FindingRows.Mechanism(change, [.. mechanism[(change.Participant, change.Contrast.Name)]]),
                    .. change.Caveats.Select(caveat => caveat.AsReason),
                    .. Standards.Of(change, players, settings) is { } standard ? [standard] : Array.Empty<Reason>(),
                    .. NextSteps.Of(change, verdict, settings),
                ], settings.Confidence);
            }

            AddStudy(rows, comparison, group, [.. JointDraws.Of(players, settings)], settings);
        }

        return [Rows(input.Output("group_effects"), group), rows.Build()];
    }

    private static void AddStudy(RowSetBuilder rows, List<(PlayerChange Change, Verdict Verdict)> comparison, List<GroupEffect> group, List<JointTest> draws, FindingSettings settings)
    {
        var first = comparison[0].Change;
        var judged = comparison.Count(player => player.Verdict != Verdict.CannotTell);
        if (judged == 0 && !first.Outcome.IsPrimary)
            return;
        var finding = StudyFinding.Of(comparison, Find(EffectMeasure.Difference), Find(GroupEffect.IndividualResponse), draws.Exists(draw => draw.IsUnconvinced(settings.Confidence)), settings.Confidence);
        FindingRows.Add(rows, finding, comparison, [.. draws.Select(draw => draw.Effect)]);
        group.AddRange(draws.Select(draw => draw.Effect));
        group.Add(new GroupEffect
        {
            Outcome = first.Outcome.Name,
            Contrast = first.Contrast.Name,
            Measure = GroupEffect.PlayersSupported,
            Estimate = Estimate.Of("count of players with the verdict 'supported'", comparison.Count(player => player.Verdict == Verdict.Supported)),
            Players = judged,
            Unit = "1",
            Planned = first.Basis == Basis.Planned,
        });

        GroupEffect? Find(string measure) => group.Find(effect => effect.Outcome == first.Outcome.Name && effect.Contrast == first.Contrast.Name && effect.Measure == measure);
    }

    private static RowSet Rows(TableDefinition table, IEnumerable<GroupEffect> group)
    {
        var rows = new RowSetBuilder(table);
        foreach (var effect in group)
        {
            rows.Add(
                ("outcome", effect.Outcome),
                ("contrast", effect.Contrast),
                ("measure", effect.Measure),
                ("estimate", effect.Estimate.Value),
                ("se", effect.Estimate.StandardError),
                ("ci_low", effect.Estimate.Interval?.Low),
                ("ci_high", effect.Estimate.Interval?.High),
                ("p", effect.Estimate.P),
                ("p_adjusted", effect.AdjustedP),
                ("tau2", effect.TauSquared),
                ("i2", effect.ISquared),
                ("pi_low", effect.Prediction?.Low),
                ("pi_high", effect.Prediction?.High),
                ("n", effect.Players),
                ("unit", effect.Unit),
                ("method", effect.Estimate.Method),
                ("planned", effect.Planned),
                ("undefined", effect.Estimate.Undefined));
        }

        return rows.Build();
    }
}
