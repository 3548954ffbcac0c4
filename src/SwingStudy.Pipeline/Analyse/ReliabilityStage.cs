using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Reliability;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>How well the outcomes can be measured at all.</summary>
internal sealed class ReliabilityStage : Stage<ReliabilitySettings>
{
    private const string SessionMean = "session-mean";
    private const string Swing = "swing";

    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "reliability",
        Title = "Reliability",
        Summary = "Estimates reliability and measurement error of every outcome from the baseline, and the study's pooled session and swing noise.",
        Unit = UnitOfWork.Study,
        Inputs = [new("swings", Slice.WholeTable), new("flags", Slice.WholeTable), new("noise", Slice.WholeTable)],
        Outputs = ["reliability"],
        CodeVersion = "2",
    };

    protected override ReliabilitySettings SettingsOf(StudySetup setup) => ReliabilitySettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, ReliabilitySettings settings) => table switch
    {
        "swings" => [.. CountedSwings.Columns, .. OutcomeSetting.Columns(settings.Outcomes)],
        "flags" => ExcludedValues.Columns,
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(ReliabilitySettings settings, StageInput input)
    {
        var swings = new CountedSwings(input.Rows("swings"), input.Rows("flags"));
        var rows = new RowSetBuilder(input.Output("reliability"));
        foreach (var outcome in settings.Outcomes.Where(outcome => outcome.IsNumeric))
        {
            CountedValue[] baseline = [.. swings.Values(outcome.Name).Where(value => settings.BaselinePhases.Contains(value.Phase))];
            AddTrials(rows, outcome, SessionMean, TrialValues.OfSessionMeans(baseline), settings.Confidence);
            AddTrials(rows, outcome, Swing, TrialValues.OfSwings(baseline), settings.Confidence);
            AddPooled(rows, outcome, PooledNoise.Sum(input.Rows("noise"), outcome.Name, without: null));
        }

        return [rows.Build()];
    }

    private static void AddTrials(RowSetBuilder rows, OutcomeSetting outcome, string level, TrialValues trials, double confidence)
    {
        if (trials.Lacks is { } reason)
        {
            Add(rows, outcome, level, "icc-2-1", "1", trials, Estimate.NotDefined("icc-2-1", reason));
            return;
        }

        var table = TrialTable.Of(trials.Values, trials.Trials);
        var error = MeasurementError.Agreement(table, confidence);
        Add(rows, outcome, level, "icc-2-1", "1", trials, IntraclassCorrelation.Icc21(table, confidence));
        Add(rows, outcome, level, "sem", outcome.Unit, trials, error);
        Add(rows, outcome, level, "smallest-detectable-change", outcome.Unit, trials, MeasurementError.SmallestDetectableChange(error, confidence));
    }

    private static void AddPooled(RowSetBuilder rows, OutcomeSetting outcome, NoiseSums sum)
    {
        var noise = StudyNoise.Of(sum);
        var trials = new TrialValues([], 0, 0);
        const string method = "nested-anova-within-phases";
        Add(rows, outcome, SessionMean, "session-sd", outcome.Unit, trials, noise.SessionStandardDeviation is { } session
            ? Estimate.Of(method, session, degreesOfFreedom: noise.ComponentDegreesOfFreedom)
            : Estimate.NotDefined(method, "no phase of any player has a second session"));
        Add(rows, outcome, Swing, "swing-sd", outcome.Unit, trials, noise.SwingStandardDeviation is { } swing
            ? Estimate.Of(method, swing, degreesOfFreedom: noise.SwingDegreesOfFreedom)
            : Estimate.NotDefined(method, "no session has a second swing"));
    }

    private static void Add(RowSetBuilder rows, OutcomeSetting outcome, string level, string coefficient, string? unit, TrialValues trials, Estimate estimate) => rows.Add(
        ("outcome", outcome.Name),
        ("level", level),
        ("coefficient", coefficient),
        ("estimate", estimate.Value),
        ("ci_low", Limit(estimate.Interval?.Low)),
        ("ci_high", Limit(estimate.Interval?.High)),
        ("n", trials.Players > 0 ? trials.Players : null),
        ("k", trials.Trials > 0 ? trials.Trials : null),
        ("df", estimate.DegreesOfFreedom),
        ("unit", unit),
        ("method", estimate.Method),
        ("undefined", estimate.Undefined));

    private static double? Limit(double? limit) => limit is { } value && double.IsFinite(value) ? value : null;
}
