using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Estimates each player's change in each outcome and contrast.</summary>
internal sealed class EffectStage : Stage<EffectSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "effects",
        Title = "Effects",
        Summary = "Estimates each player's change in every outcome and contrast, with both floors of noise in its standard error.",
        Unit = UnitOfWork.Participant,
        Inputs = [new("swings", Slice.SameParticipant), new("flags", Slice.SameParticipant), new("noise", Slice.WholeTable)],
        Outputs = ["effects"],
        CodeVersion = "4",
    };

    protected override EffectSettings SettingsOf(StudySetup setup) => EffectSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, EffectSettings settings) => table switch
    {
        "swings" => [.. CountedSwings.Columns, .. OutcomeSetting.Columns(settings.Outcomes)],
        "flags" => ExcludedValues.Columns,
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(EffectSettings settings, StageInput input)
    {
        var swings = new CountedSwings(input.Rows("swings"), input.Rows("flags"));
        var noise = input.Rows("noise");
        var rows = new RowSetBuilder(input.Output("effects"));
        foreach (var outcome in settings.Outcomes.Where(outcome => outcome.IsNumeric))
        {
            var values = swings.Values(outcome.Name);
            var pooled = StudyNoise.Of(PooledNoise.Sum(noise, outcome.Name, input.Participant));
            foreach (var contrast in settings.Contrasts)
            {
                var data = PhaseValues.Of(values, contrast);
                var change = HonestChangeRule.Judge(data, pooled, outcome.Worthwhile ?? 0, settings.Confidence);
                foreach (var measure in EffectMeasure.All)
                {
                    var planned = outcome.Contrasts.Contains(contrast.Name) && settings.Measures.Contains(measure);
                    Add(rows, input.Participant!, outcome, contrast.Name, measure, change, EffectMeasure.Of(measure, outcome, data, change, settings), planned);
                }

                if (contrast.ShareOf is { } name && settings.Contrasts.First(other => other.Name == name) is var withCue)
                {
                    var planned = outcome.Contrasts.Contains(contrast.Name) && outcome.Contrasts.Contains(name);
                    Add(rows, input.Participant!, outcome, contrast.Name, EffectMeasure.ShareKept, change, Share(values, withCue, contrast, pooled, change, settings.Confidence), planned);
                }
            }
        }

        return [rows.Build()];
    }

    /// <summary>In percent: 100 = all of the change with the cue.</summary>
    private static Estimate Share(
        IReadOnlyList<CountedValue> values, ContrastSetting withCue, ContrastSetting later, StudyNoise pooled, HonestChange change, double confidence)
    {
        var first = HonestChangeRule.Judge(PhaseValues.Of(values, withCue), pooled, confidence: confidence);
        var between = HonestChangeRule.Judge(PhaseValues.Of(values, new ContrastSetting("", withCue.To, later.To)), pooled, confidence: confidence);
        var share = ShareKept.Of(first.Estimate, change.Estimate, between.Estimate, confidence);
        return share.Value is not { } value
            ? share
            : Estimate.Of(share.Method, 100 * value, interval: share.Interval is { } i ? new Interval(100 * i.Low, 100 * i.High, i.Level) : null, degreesOfFreedom: share.DegreesOfFreedom);
    }

    private static void Add(
        RowSetBuilder rows, string participant, OutcomeSetting outcome, string contrast, string measure, HonestChange change, Estimate estimate, bool planned) => rows.Add(
        ("participant", participant),
        ("outcome", outcome.Name),
        ("contrast", contrast),
        ("measure", measure),
        ("estimate", estimate.Value),
        ("se", estimate.StandardError),
        ("ci_low", Limit(estimate.Interval?.Low)),
        ("ci_high", Limit(estimate.Interval?.High)),
        ("p", estimate.P),
        ("n_from", change.SwingsBefore),
        ("n_to", change.SwingsAfter),
        ("sessions_from", change.SessionsBefore),
        ("sessions_to", change.SessionsAfter),
        ("unit", EffectMeasure.UnitOf(measure, outcome)),
        ("method", estimate.Method),
        ("planned", planned),
        ("undefined", estimate.Undefined ?? (estimate.Interval is null ? WhyWithoutInterval(measure, change) : null)));

    private static string? WhyWithoutInterval(string measure, HonestChange change) => measure switch
    {
        EffectMeasure.Difference => CannotTellText.Of(change),
        EffectMeasure.ShareKept => CannotTellText.Of(change) ?? "the change with the cue may be none, and a share of it has no limits",
        _ => null,
    };

    /// <summary>An open limit is missing in tables, which hold no infinity.</summary>
    private static double? Limit(double? limit) => limit is { } value && double.IsFinite(value) ? value : null;
}
