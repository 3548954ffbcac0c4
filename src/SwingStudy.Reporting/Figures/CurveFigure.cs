using System.Globalization;
using ScottPlot;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>One player's mean curves of two phases with their bands, and the spans in which they differ.</summary>
internal static class CurveFigure
{
    private const int Width = 800;
    private const int Height = 330;
    private const int Left = 66;
    private const int Bottom = 56;
    private const int Above = 26;
    private const int Right = 118;

    /// <summary>Share of the field below the curves that belongs to the spans.</summary>
    private const double SpanRoom = 0.1;

    /// <summary>Draws; null when either phase has no mean curve.</summary>
    public static Figure? Draw(StudyReport report, string channel, Contrast contrast, string participant)
    {
        var means = report.Tables.CurveMeans.Where(row => row.Participant == participant && row.Channel == channel && row.Mean.Count > 0).ToList();
        if (means.Find(row => row.Phase == contrast.From) is not { } from || means.Find(row => row.Phase == contrast.To) is not { } to)
            return null;
        var tests = report.Tables.CurveTests.Where(row => row.Participant == participant && row.Channel == channel && row.Contrast == contrast.Name).ToList();
        var spans = tests.FindAll(row => row.Measure == CurveTestRow.Span && double.IsFinite(row.From));
        var title = ValueDisplay.LabelOf(CurveText.Title(channel), CurveText.Symbol(from.Unit));
        var left = Left + Sheet.LeftTitleRoom(title, Height - Bottom - Above);
        var plot = Sheet.Empty(left, Bottom);
        var places = from.Places;
        var (low, high, isCut) = Limits(from, to);
        var field = new AxisLimits(places[0], places[^1], low - (SpanRoom * (high - low)), high);
        Sheet.Frame(plot, field, new PixelSize(Width - left, Height - Bottom), Above, Right);
        DrawMoments(plot, from, field);
        foreach (var row in new[] { from, to })
            DrawBand(plot, row, Palette.OfPhase(report.Protocol.Phase(row.Phase)?.Role), low, high);
        foreach (var row in new[] { from, to })
            DrawMean(plot, row, Palette.OfPhase(report.Protocol.Phase(row.Phase)?.Role));
        DrawNames(plot, report, from, to, field);
        DrawSpans(plot, spans, field, low);
        Sheet.Stroke(plot, field.Left, field.Bottom, field.Right, field.Bottom, Palette.Quiet, 1.5f);
        var steps = Sheet.Steps(low, high, 7);
        plot.Axes.Left.SetTicks(steps, Sheet.Texts(steps));
        plot.YLabel(Sheet.Wrapped(title, Sheet.Normal, Height - Bottom - Above));
        return Sheet.Finish(
            plot, $"curve-{channel.Replace('_', '-')}-{contrast.Name}-{participant}", Caption(channel, participant, from, to, tests, isCut), AltText(channel, participant, from, to, tests, spans), Width, Height);
    }

    /// <summary>The axis holds the mean curves and at most half their range around them: a band that is wider is cut, so that the curves stay readable.</summary>
    private static (double Low, double High, bool IsCut) Limits(CurveMeanRow from, CurveMeanRow to)
    {
        var lines = from.Mean.Concat(to.Mean).ToList();
        var (least, most) = (lines.Min(), lines.Max());
        var range = Math.Max(most - least, 1e-9 * Math.Max(1, Math.Abs(most)));
        var all = lines.Concat(from.Low).Concat(from.High).Concat(to.Low).Concat(to.High).ToList();
        var (low, high) = (Math.Max(all.Min(), least - (0.5 * range)), Math.Min(all.Max(), most + (0.5 * range)));
        var pad = 0.04 * (high - low);
        return (low - pad, high + pad, all.Min() < low - pad || all.Max() > high + pad);
    }

    private static void DrawMoments(Plot plot, CurveMeanRow row, AxisLimits field)
    {
        if (row.Axis == CurveMeanRow.SwingPhases)
        {
            plot.Axes.Bottom.SetTicks([0, 50, 100, 150, 200], ["start", "", "top", "", "impact"]);
            Sheet.Stroke(plot, 100, field.Bottom, 100, field.Top, Palette.Hair, 1);
            Sheet.Stroke(plot, 200, field.Bottom, 200, field.Top, Palette.Hair, 1);
            plot.XLabel("Share of backswing and downswing");
            return;
        }

        var steps = Sheet.Steps(field.Left, field.Right, 8);
        plot.Axes.Bottom.SetTicks(steps, [.. steps.Select(step => ValueDisplay.Number(step, 0))]);
        if (field.Left < 0 && field.Right > 0)
            Sheet.Stroke(plot, 0, field.Bottom, 0, field.Top, Palette.Hair, 1);
        plot.XLabel("Time from impact (ms)");
    }

    private static void DrawBand(Plot plot, CurveMeanRow row, Color color, double low, double high)
    {
        if (row.Low.Count == 0)
            return;
        var band = plot.Add.FillY(row.Places, [.. row.Low.Select(limit => Math.Clamp(limit, low, high))], [.. row.High.Select(limit => Math.Clamp(limit, low, high))]);
        band.FillColor = color.WithAlpha(0.16);
        band.LineWidth = 0;
    }

    private static void DrawMean(Plot plot, CurveMeanRow row, Color color)
    {
        var line = plot.Add.ScatterLine(row.Places, [.. row.Mean]);
        line.Color = color;
        line.LineWidth = 2;
        line.MarkerSize = 0;
    }

    /// <summary>The phases' names where their curves end, moved apart where both end at the same height.</summary>
    private static void DrawNames(Plot plot, StudyReport report, CurveMeanRow from, CurveMeanRow to, AxisLimits field)
    {
        var (a, b) = (from.Mean[^1], to.Mean[^1]);
        var near = Math.Abs(a - b) < 0.08 * field.VerticalSpan;
        foreach (var (row, end, isUpper) in new[] { (from, a, a >= b), (to, b, b > a) })
        {
            Sheet.Beside(
                plot, Sheet.Wrapped(row.Phase.Replace('-', ' '), Sheet.Small, Right - 8), field.Right, Math.Clamp(end, field.Bottom, field.Top),
                near ? (isUpper ? Alignment.LowerLeft : Alignment.UpperLeft) : Alignment.MiddleLeft, Palette.OfPhase(report.Protocol.Phase(row.Phase)?.Role), Sheet.Small, right: 6);
        }
    }

    private static void DrawSpans(Plot plot, List<CurveTestRow> spans, AxisLimits field, double low)
    {
        var (bottom, top) = (field.Bottom + (0.3 * (low - field.Bottom)), field.Bottom + (0.75 * (low - field.Bottom)));
        foreach (var span in spans)
        {
            var (left, right) = (Math.Max(span.From, field.Left), Math.Min(Math.Max(span.To, span.From + (0.004 * field.HorizontalSpan)), field.Right));
            if (span.Permuted == CurveMeanRow.OverSessions)
            {
                Sheet.Fill(plot, left, right, bottom, top, Palette.Ink);
                continue;
            }

            var frame = plot.Add.Rectangle(left, right, bottom, top);
            frame.FillColor = Colors.Transparent;
            frame.LineColor = Palette.Quiet;
            frame.LineWidth = 1.4f;
        }
    }

    private static string Caption(string channel, string participant, CurveMeanRow from, CurveMeanRow to, List<CurveTestRow> tests, bool isCut)
    {
        var parts = new List<string> { $"{CurveText.Title(channel)} of {participant}: mean curves of {Phase(from)} and {Phase(to)}." };
        parts.AddRange(Bands(from, to));
        if (isCut)
            parts.Add("A band that leaves the picture is cut at its edge.");
        if (tests.Find(row => row.Permuted is not null) is { } test)
        {
            parts.Add(test.Permuted == CurveMeanRow.OverSessions
                ? "Bars below, and not the bands, tell where the phases differ: by more than exchanging whole sessions gives anywhere on the curve."
                : "Hollow bars below: where the phases differ by more than exchanging swings gives. That leaves out how much days differ, so that they prove no change.");
        }

        if (from.Lost + to.Lost is var lost and > 0)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{lost} counted {(lost == 1 ? "swing" : "swings")} without a whole curve left out."));
        return string.Join(' ', parts);
    }

    /// <summary>Which band each phase has, from what, and what it may be read as.</summary>
    private static IEnumerable<string> Bands(CurveMeanRow from, CurveMeanRow to)
    {
        foreach (var alike in new[] { from, to }.Where(row => row.Low.Count > 0).GroupBy(row => (row.IsSimultaneous, row.Over, row.Level)))
        {
            var (isWhole, over, level) = alike.Key;
            var phases = string.Join(" and ", alike.Select(row => Plain(row.Phase)));
            var basis = over == CurveMeanRow.OverSessions
                ? $"from its {string.Join(" and ", alike.Select(row => row.Sessions.ToString(CultureInfo.InvariantCulture)))} session means"
                : $"from its {string.Join(" and ", alike.Select(row => row.Swings.ToString(CultureInfo.InvariantCulture)))} swings, since sessions are too few, so that it holds for these sessions only";
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Band of {phases}: where the mean of the phase lies with {100 * level:0.#} % confidence, {(isWhole ? "over the whole curve at once" : "at each point taken by itself")}, {basis}.");
        }

        foreach (var none in new[] { from, to }.Where(row => row.Low.Count == 0))
            yield return $"No band of {Plain(none.Phase)}: too few swings.";
    }

    private static string AltText(string channel, string participant, CurveMeanRow from, CurveMeanRow to, List<CurveTestRow> tests, List<CurveTestRow> spans)
    {
        var isPhases = from.Axis == CurveMeanRow.SwingPhases;
        var whole = tests.Find(row => row.Measure == CurveTestRow.Whole);
        var outcome = whole switch
        {
            null => "Not compared.",
            { Undefined: { } reason } when double.IsNaN(whole.P) => $"No test: {reason}.",
            _ when spans.Count == 0 => $"They differ nowhere beyond what chance gives ({CurveText.P(whole.P)} over the whole curve).",
            _ => string.Join("; ", spans.Select(span =>
                $"{span.Direction} in {Plain(to.Phase)} from {CurveText.Span(span, isPhases)}, {CurveText.P(span.P)}")) + $", exchanging {whole.Permuted}.",
        };
        return $"{CurveText.Title(channel)} of {participant}, mean curves of {Phase(from)} and {Phase(to)}: {outcome}";
    }

    private static string Phase(CurveMeanRow row) => string.Create(
        CultureInfo.InvariantCulture, $"{Plain(row.Phase)} ({row.Swings} {(row.Swings == 1 ? "swing" : "swings")}, {row.Sessions} {(row.Sessions == 1 ? "session" : "sessions")})");

    private static string Plain(string name) => name.Replace('-', ' ');
}
