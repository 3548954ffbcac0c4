using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>How rows of a table are named and shown in a trace.</summary>
/// <param name="Definition">The table.</param>
/// <param name="Keys">Columns whose values, joined by '/', name a row. A missing value is an empty part.</param>
/// <param name="Shown">Column that is shown when none is asked for; null when the whole row is meant.</param>
internal sealed record TracedTable(TableDefinition Definition, IReadOnlyList<string> Keys, string? Shown = null)
{
    /// <summary>Whether rows rest on so many others that their whole trace is longer than anybody reads.</summary>
    public bool IsSummary => Definition.Name == StudyTables.Findings.Name || (Keys.Contains("outcome") && !Keys.Contains("participant"));

    /// <summary>The name of a row.</summary>
    public string KeyOf(TracedRow row) => string.Join('/', Keys.Select(row.Value));

    /// <summary>All tables of a study.</summary>
    public static IReadOnlyList<TracedTable> All(VariableDictionary dictionary) =>
    [
        new(StudyTables.Captures(dictionary), ["capture_id"]),
        new(StudyTables.Curves, ["capture_id", "channel"], "values"),
        new(StudyTables.CaptureEvents, ["capture_id", "event"], "time_s"),
        new(StudyTables.Rejects, ["original_sha256", "original_row"], "reason"),
        new(StudyTables.Links, ["capture_id"], "swing_id"),
        new(StudyTables.Clocks, ["session", "source", "device"], "offset_s"),
        new(StudyTables.Measures(dictionary), ["swing_id"]),
        new(StudyTables.SwingEvents, ["swing_id", "event"], "time_s"),
        new(StudyTables.SwingCurves, ["swing_id", "channel"], "values"),
        new(StudyTables.CurveMeasures, ["swing_id", "variable"], "value"),
        new(StudyTables.Flags, ["swing_id", "capture_id", "variable", "rule"], "action"),
        new(StudyTables.Swings(dictionary), ["swing_id"]),
        new(StudyTables.Noise, ["participant", "outcome"], "session_ss"),
        new(StudyTables.Effects, ["participant", "outcome", "contrast", "measure"], "estimate"),
        new(StudyTables.Reliability, ["outcome", "level", "coefficient"], "estimate"),
        new(StudyTables.Agreement, ["outcome", "source_a", "source_b"], "bias"),
        new(StudyTables.Trends, ["participant", "outcome", "contrast", "term"], "estimate"),
        new(StudyTables.CurveMeans, ["participant", "channel", "phase"], "mean"),
        new(StudyTables.CurveTests, ["participant", "channel", "contrast", "measure"], "p"),
        new(StudyTables.GroupEffects, ["outcome", "contrast", "measure"], "estimate"),
        new(StudyTables.Findings, ["scope", "participant", "outcome", "contrast"], "verdict"),
    ];
}
