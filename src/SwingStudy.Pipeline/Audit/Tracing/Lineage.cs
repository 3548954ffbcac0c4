using System.Text.RegularExpressions;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Analyse;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>Which rows a row was made from, table by table.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="rows">Its tables.</param>
internal sealed partial class Lineage(StudySetup setup, TracedRows rows)
{
    /// <summary>The rows that one row, or one column of it, was made from, with the column that matters there.</summary>
    public IEnumerable<(TracedRow Row, string? Column)> Of(TracedRow row, string? column) => row.Table switch
    {
        "curves" or "capture_events" or "links" => Capture(row.Text("participant"), row.Text("capture_id")!, null),
        "clocks" => Device(row),
        "measures" or "swings" => Swing(row, column),
        "swing_events" or "swing_curves" => Recordings(row, null),
        "curve_measures" => Recordings(row, row.Text("source")),
        "flags" => Flagged(row),
        "noise" => Counted(row.Text("participant")!, row.Text("outcome")!, null),
        "effects" or "trends" => Counted(row.Text("participant")!, row.Text("outcome")!, Phases(row)),
        "curve_means" => Curves(row, [row.Text("phase")!]),
        "curve_tests" => Curves(row, Phases(row)!),
        "reliability" => Shown("noise", other => other.Text("outcome") == row.Text("outcome")),
        "agreement" => Compared(row),
        "group_effects" => Shown("effects", other => IsSameComparison(other, row) && other.Text("measure") == EffectMeasure.Difference),
        "findings" => Finding(row),
        _ => [],
    };

    /// <summary>How a value came about, where its sources do not tell.</summary>
    public string? Note(TracedRow row, string? column) => row.Table switch
    {
        "captures" when row.Text("revision_of") is { } earlier => $"replaces {earlier}",
        "swings" or "measures" when column is not null && FormulaOf(column) is { } formula => $"derived: {formula}",
        "swings" or "measures" when column is not null && !Swing(row, column).Any() => "from the session's entry in the registry, or nothing was read",
        "effects" when row.Text("measure") == EffectMeasure.Difference => Joined(row.Text("method"), "with the scatter of all players, in table noise"),
        "effects" or "trends" or "reliability" or "agreement" or "group_effects" or "swing_curves" or "swing_events" or "curve_means" or "curve_tests" => row.Text("method"),
        "curve_measures" => Joined(row.Text("method"), row.Text("reason")),
        "flags" => row.Text("detail"),
        "links" => row.Text("method"),
        "findings" => row.Text("statement"),
        "rejects" => row.Text("detail"),
        _ => null,
    };

    private static string? Joined(string? one, string? other) => one is null || other is null ? one ?? other : $"{one}; {other}";

    private IEnumerable<(TracedRow, string?)> Capture(string? participant, string id, string? column) =>
        rows.Of("captures", participant).Where(capture => capture.Text("capture_id") == id).Select(capture => (capture, column));

    private IEnumerable<(TracedRow, string?)> Device(TracedRow clock)
    {
        var (participant, session) = (clock.Text("participant")!, clock.Text("session"));
        var ids = rows.Of("links", participant).Where(link => link.Text("session") == session).Select(link => link.Text("capture_id")!).ToHashSet(StringComparer.Ordinal);
        return rows.Of("captures", participant).Concat(rows.Of("captures", null))
            .Where(capture => ids.Contains(capture.Text("capture_id")!) && capture.Text("source") == clock.Text("source") && capture.Text("device") == clock.Text("device"))
            .Select(capture => (capture, (string?)"struck_at"));
    }

    /// <summary>The captures that hold the variable and what was computed from curves, or could not be; without either, the variables of its formula.</summary>
    private IEnumerable<(TracedRow, string?)> Swing(TracedRow swing, string? column)
    {
        var (participant, id) = (swing.Text("participant")!, swing.Text("swing_id")!);
        if (column is null)
            return rows.CapturesOf(participant, id).Select(capture => (capture, (string?)null));
        if (!setup.Dictionary.TryGet(column, out _))
            return [];
        List<(TracedRow, string?)> read =
        [
            .. rows.CapturesOf(participant, id).Where(capture => capture.Has(column)).Select(capture => (capture, column)),
            .. rows.Of("curve_measures", participant).Where(measure => measure.Text("swing_id") == id && measure.Text("variable") == column)
                .Select(measure => (measure, "value")),
        ];
        return read.Count > 0 ? read : Inputs(column).Where(swing.Has).Select(input => (swing, (string?)input));
    }

    /// <summary>The recordings of the swing; with what they were judged by: empty plates and quiet standing of the session.</summary>
    private IEnumerable<(TracedRow, string?)> Recordings(TracedRow row, string? source)
    {
        var (participant, id) = (row.Text("participant")!, row.Text("swing_id")!);
        var session = rows.Of("swings", participant).Where(swing => swing.Text("swing_id") == id).Select(swing => swing.Text("session")).FirstOrDefault();
        return rows.CapturesOf(participant, id).Concat(session is null ? [] : rows.CapturesBeside(participant, session).Where(capture => capture.Text("purpose") != "swing"))
            .Where(capture => capture.Has("purpose") && (source is null || source.Split(SwingPlates.Joint).Contains(capture.Text("source")))).Select(capture => (capture, (string?)null));
    }

    private IEnumerable<(TracedRow, string?)> Flagged(TracedRow flag)
    {
        var participant = flag.Text("participant");
        return flag.Text("swing_id") is { } swing
            ? rows.Of("swings", participant).Where(row => row.Text("swing_id") == swing).Select(row => (row, flag.Text("variable") is { } variable && row.HasColumn(variable) ? variable : null))
            : flag.Text("capture_id") is { } capture ? Capture(participant, capture, null) : [];
    }

    private IEnumerable<(TracedRow, string?)> Counted(string participant, string outcome, IReadOnlyCollection<string>? phases) =>
        rows.Counted(participant, outcome).Where(swing => phases is null || phases.Contains(swing.Text("phase")!)).Select(swing => (swing, (string?)outcome));

    private IEnumerable<(TracedRow, string?)> Curves(TracedRow row, IReadOnlyCollection<string> phases)
    {
        var participant = row.Text("participant")!;
        var swings = rows.Of("swings", participant).Where(swing => swing.Value("included") == "true" && swing.Text("phase") is { } phase && phases.Contains(phase))
            .Select(swing => swing.Text("swing_id")!).ToHashSet(StringComparer.Ordinal);
        return rows.Of("swing_curves", participant).Where(curve => curve.Text("channel") == row.Text("channel") && swings.Contains(curve.Text("swing_id")!))
            .Select(curve => (curve, (string?)"values"));
    }

    /// <summary>The readings of both sources, swing by swing, where both have one.</summary>
    private IEnumerable<(TracedRow, string?)> Compared(TracedRow row)
    {
        var (variable, sources) = (row.Text("outcome")!, new[] { row.Text("source_a"), row.Text("source_b") });
        foreach (var player in rows.All("links").Select(link => link.Text("participant")).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList())
        {
            foreach (var swing in rows.Of("swings", player))
            {
                List<(TracedRow Row, string? Column)> readings =
                [
                    .. rows.CapturesOf(player, swing.Text("swing_id")!).Where(capture => sources.Contains(capture.Text("source")) && capture.Has(variable)).Select(capture => (capture, variable)),
                    .. Swing(swing, variable).Where(read => read.Item1.Table == "curve_measures" && read.Item1.Has("value") && sources.Contains(read.Item1.Text("source"))),
                ];
                if (readings.Select(reading => reading.Row.Text("source")).Distinct().Count() == 2)
                {
                    foreach (var reading in readings)
                        yield return reading;
                }
            }
        }
    }

    private IEnumerable<(TracedRow, string?)> Finding(TracedRow finding) => finding.Text("participant") is { } player
        ? rows.Of("effects", player).Concat(rows.Of("trends", player)).Where(row => IsSameComparison(row, finding)).Select(row => (row, rows.Table(row.Table).Shown))
        : Shown("group_effects", row => IsSameComparison(row, finding)).Concat(Shown("findings", row => row.Has("participant") && IsSameComparison(row, finding)));

    private IEnumerable<(TracedRow, string?)> Shown(string table, Func<TracedRow, bool> isMeant) => rows.All(table).Where(isMeant).Select(row => (row, rows.Table(table).Shown));

    private static bool IsSameComparison(TracedRow one, TracedRow other) => one.Text("outcome") == other.Text("outcome") && one.Text("contrast") == other.Text("contrast");

    /// <summary>The phases that a row compares; null for all. A share kept compares three.</summary>
    private string[]? Phases(TracedRow row)
    {
        if (setup.Protocol.Contrasts.FirstOrDefault(known => known.Name == row.Text("contrast")) is not { } contrast)
            return null;
        return row.Table == "effects" && row.Text("measure") == EffectMeasure.ShareKept
            ? [.. setup.Protocol.Contrasts.SelectMany(known => new[] { known.From, known.To }).Distinct()]
            : [contrast.From, contrast.To];
    }

    private string? FormulaOf(string variable) => setup.Dictionary.TryGet(variable, out var definition) ? definition.Formula : null;

    private IEnumerable<string> Inputs(string variable) => FormulaOf(variable) is { } formula
        ? Word().Matches(formula).Select(match => match.Value).Where(word => word != variable && setup.Dictionary.TryGet(word, out _)).Distinct()
        : [];

    [GeneratedRegex("[a-z][a-z0-9_]+")]
    private static partial Regex Word();
}
