using System.Globalization;
using ScottPlot;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>One player's summed vertical force around impact, swing by swing, before and after, with the events of the same swings below.</summary>
internal static class ForceFigure
{
    private const int Width = 800;
    private const int Height = 430;
    private const int Left = 66;
    private const int Bottom = 52;
    private const int Above = 26;
    private const int Right = 118;
    private const double FromMs = -1000;
    private const double ToMs = 300;

    /// <summary>Part of the field below the curves that belongs to the events.</summary>
    private const double EventRoom = 0.30;

    /// <summary>The outcome that says when the force peaks.</summary>
    private const string PeakTime = "vertical_peak_total_time";

    private static readonly (string Name, string Title)[] Events = [("start", "start"), ("top", "top"), ("grip_peak", "hands fastest")];

    /// <summary>Draws; null when either phase has no curve of a counted swing.</summary>
    public static Figure? Draw(StudyReport report, Contrast contrast, string participant)
    {
        var (from, to) = (Of(report, contrast.From, participant), Of(report, contrast.To, participant));
        if (from.Curves.Count == 0 || to.Curves.Count == 0)
            return null;
        var inside = from.Curves.Concat(to.Curves).SelectMany(curve => Points(curve).Select(point => point.Value)).Append(1).ToList();
        var (least, most) = (inside.Min() - 0.05, inside.Max() + 0.05);
        var low = least - (EventRoom / (1 - EventRoom) * (most - least));
        var field = new AxisLimits(FromMs, ToMs, low, most);
        var plot = Sheet.Empty(Left, Bottom);
        Sheet.Frame(plot, field, new PixelSize(Width - Left, Height - Bottom), Above, Right);
        Sheet.Stroke(plot, FromMs, 1, ToMs, 1, Palette.Quiet, 1, LinePattern.Dotted);
        Sheet.Beside(plot, "body weight", ToMs, 1, Alignment.MiddleLeft, Palette.Quiet, Sheet.Small, right: 5);
        Sheet.Stroke(plot, 0, low, 0, most, Palette.Ink, 1.2f);
        Sheet.Beside(plot, "impact", 0, most, Alignment.LowerCenter, Palette.Ink, Sheet.Small, down: -4);
        foreach (var phase in new[] { from, to })
        {
            foreach (var curve in phase.Curves)
                Line(plot, curve, phase.Color.WithAlpha(0.32));
        }

        DrawEvents(plot, from, to, low, least);
        DrawNames(plot, from, to, most, least);
        Sheet.Stroke(plot, FromMs, low, ToMs, low, Palette.Quiet, 1.5f);
        plot.Axes.Bottom.SetTicks([-1000, -800, -600, -400, -200, 0, 200], ["−1000", "−800", "−600", "−400", "−200", "0", "200"]);
        var steps = Sheet.Steps(least, most, 6);
        plot.Axes.Left.SetTicks(steps, Sheet.Texts(steps));
        plot.YLabel("Vertical force, both feet (body weights)");
        plot.XLabel("Time from impact (ms)");
        return Sheet.Finish(
            plot,
            $"force-{contrast.Name}-{participant}",
            $"Vertical force of both feet of {participant} around impact, {Words(from)} and {Words(to)}. One line a swing; below, one stroke a swing where its start, its top, the moment at which the hands are fastest and the peak of the force lie, as far as devices tell them.",
            AltText(participant, from, to) + Found(report, contrast, participant),
            Width,
            Height);
    }

    private static Side Of(StudyReport report, string phase, string participant)
    {
        var outcome = report.Protocol.Outcomes.FirstOrDefault(outcome => outcome.Role == OutcomeRole.Primary && report.Tables.Swings.ContainsKey(outcome.Variable));
        HashSet<string> counted = outcome is null
            ? []
            : [.. report.Tables.Swings[outcome.Variable].Where(swing => swing.Counts && swing.Participant == participant && swing.Phase == phase).Select(swing => swing.SwingId)];
        var peaks = report.Tables.Swings.GetValueOrDefault(PeakTime)?.Where(swing => swing.Counts && counted.Contains(swing.SwingId)).Select(swing => swing.Value) ?? [];
        return new(
            phase.Replace('-', ' '),
            Palette.OfPhase(report.Protocol.Phase(phase)?.Role),
            [.. report.Tables.SwingCurves.Where(curve => counted.Contains(curve.SwingId))],
            report.Tables.SwingEvents.Where(row => counted.Contains(row.SwingId)).ToLookup(row => row.Event, row => 1000 * row.Time),
            [.. peaks]);
    }

    private static IEnumerable<(double Time, double Value)> Points(SwingCurveRow curve)
    {
        for (var i = 0; i < curve.Values.Count; i++)
        {
            var time = 1000 * (curve.FirstTime + (i / curve.SampleRateHz));
            if (time is >= FromMs and <= ToMs && !double.IsNaN(curve.Values[i]))
                yield return (time, curve.Values[i]);
        }
    }

    private static void Line(Plot plot, SwingCurveRow curve, Color color)
    {
        var points = Points(curve).ToArray();
        var line = plot.Add.ScatterLine(points.Select(point => point.Time).ToArray(), points.Select(point => point.Value).ToArray(), color);
        line.LineWidth = 0.9f;
    }

    private static void DrawEvents(Plot plot, Side from, Side to, double low, double least)
    {
        var rows = Events.Select(found => (found.Title, From: from.Events[found.Name].ToList(), To: to.Events[found.Name].ToList()))
            .Append(("peak of force", from.Peaks, to.Peaks)).Where(row => row.Item2.Count + row.Item3.Count > 0).ToList();
        var height = (least - low) / (rows.Count + 0.4);
        for (var i = 0; i < rows.Count; i++)
        {
            var (title, before, after) = rows[i];
            var middle = least - ((i + 0.6) * height);
            Strokes(plot, before, middle + (0.03 * height), middle + (0.38 * height), from.Color);
            Strokes(plot, after, middle - (0.38 * height), middle - (0.03 * height), to.Color);
            Sheet.Beside(plot, title, ToMs, middle, Alignment.MiddleLeft, Palette.Ink, Sheet.Small, right: 5);
        }
    }

    private static void Strokes(Plot plot, List<double> times, double bottom, double top, Color color)
    {
        foreach (var time in times.Where(time => time is >= FromMs and <= ToMs))
            Sheet.Stroke(plot, time, bottom, time, top, color.WithAlpha(0.5), 1.4f);
    }

    private static void DrawNames(Plot plot, Side from, Side to, double most, double least)
    {
        var step = 0.08 * (most - least);
        Sheet.Beside(plot, Words(from), FromMs, most - (0.5 * step), Alignment.MiddleLeft, from.Color, Sheet.Normal, right: 8);
        Sheet.Beside(plot, Words(to), FromMs, most - (1.6 * step), Alignment.MiddleLeft, to.Color, Sheet.Normal, right: 8);
    }

    private static string Words(Side side) => string.Create(CultureInfo.InvariantCulture, $"{side.Phase} ({side.Curves.Count} {(side.Curves.Count == 1 ? "swing" : "swings")})");

    private static string AltText(string participant, Side from, Side to)
    {
        static string Range(Side side) => side.Peaks.Count == 0
            ? ""
            : $"; force peaks between {ValueDisplay.Number(side.Peaks.Min(), 0)} and {ValueDisplay.Number(side.Peaks.Max(), 0)} ms from impact";
        return $"Vertical force of {participant} over time, {Words(from)}{Range(from)}, and {Words(to)}{Range(to)}.";
    }

    /// <summary>What the findings say of the time of the peak.</summary>
    private static string Found(StudyReport report, Contrast contrast, string participant) =>
        report.Tables.Findings.FirstOrDefault(finding => finding.Participant == participant && finding.Outcome == PeakTime && finding.Contrast == contrast.Name) is { } found
            ? $" Change of the time of the peak: {found.Verdict}."
            : "";

    private sealed record Side(string Phase, Color Color, List<SwingCurveRow> Curves, ILookup<string, double> Events, List<double> Peaks);
}
