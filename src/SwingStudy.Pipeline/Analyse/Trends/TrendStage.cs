using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse.Randomization;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Trends;

/// <summary>Describes each player's series: trend before the change, jump and turn at it, overlap of the phases, order within sessions.</summary>
internal sealed class TrendStage : Stage<TrendSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "trends",
        Title = "Trends",
        Summary = "Describes each player's series of session means as a single case: baseline trend, jump and turn, overlap, and order within sessions.",
        Unit = UnitOfWork.Participant,
        Inputs = [new("swings", Slice.SameParticipant), new("flags", Slice.SameParticipant), new("noise", Slice.WholeTable)],
        Outputs = ["trends"],
        CodeVersion = "5",
    };

    protected override TrendSettings SettingsOf(StudySetup setup) => TrendSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, TrendSettings settings) => table switch
    {
        "swings" => [.. CountedSwings.Columns, .. OutcomeSetting.Columns(settings.Outcomes)],
        "flags" => ExcludedValues.Columns,
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(TrendSettings settings, StageInput input)
    {
        var swings = new CountedSwings(input.Rows("swings"), input.Rows("flags"));
        var rows = new RowSetBuilder(input.Output("trends"));
        foreach (var outcome in settings.Outcomes.Where(outcome => outcome.IsNumeric))
        {
            var values = swings.Values(outcome.Name);
            var pooled = StudyNoise.Of(PooledNoise.Sum(input.Rows("noise"), outcome.Name, input.Participant));
            foreach (var contrast in settings.Contrasts)
            {
                var data = PhaseValues.Of(values, contrast);
                var change = HonestChangeRule.Judge(data, pooled, confidence: settings.Confidence);
                CountedValue[] compared = [.. values.Where(value => value.Phase == contrast.From || value.Phase == contrast.To)];
                foreach (var term in PlayerSeries.Terms(compared, data, PhaseValues.Series(values, contrast), change, outcome, settings.Confidence))
                    Add(rows, input.Participant!, outcome, contrast, term);
                if (contrast.IsWithCue && Drawn(settings, input.Participant!) is { } drawn)
                {
                    var chance = new Xoshiro256(settings.Seed).Split("randomization-test").Split(input.Participant!).Split(outcome.Name);
                    var test = DrawTest.OfPlayer(drawn, ConditionSeries.Of(values, settings.Phases), chance, settings.Resamples);
                    Add(rows, input.Participant!, outcome, contrast, new TrendTerm(TrendTerm.RandomizationTest, outcome.Unit, test.Test));
                    Add(rows, input.Participant!, outcome, contrast, new TrendTerm(TrendTerm.SmallestP, "1", test.SmallestP));
                }
            }
        }

        return [rows.Build()];
    }

    /// <summary>What was drawn for a player alone; players drawn together are tested together, with the findings.</summary>
    private static DrawnSetting? Drawn(TrendSettings settings, string participant) =>
        settings.Draws.Where(draw => !draw.IsJoint).SelectMany(draw => draw.Players).FirstOrDefault(player => player.Participant == participant);

    private static void Add(RowSetBuilder rows, string participant, OutcomeSetting outcome, ContrastSetting contrast, TrendTerm term) => rows.Add(
        ("participant", participant),
        ("outcome", outcome.Name),
        ("contrast", contrast.Name),
        ("term", term.Term),
        ("estimate", term.Estimate.Value),
        ("se", term.Estimate.StandardError),
        ("ci_low", Limit(term.Estimate.Interval?.Low)),
        ("ci_high", Limit(term.Estimate.Interval?.High)),
        ("p", term.Estimate.P),
        ("unit", term.Unit),
        ("method", term.Estimate.Method),
        ("undefined", term.Estimate.Undefined));

    private static double? Limit(double? limit) => limit is { } value && double.IsFinite(value) ? value : null;
}
