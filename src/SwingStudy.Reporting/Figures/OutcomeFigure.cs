using System.Globalization;
using NodaTime;
using NodaTime.Text;
using ScottPlot;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>One player's outcome over the sessions: single swings in their order, session means, phases, what is excluded.</summary>
/// <remarks>The marks for session means summarise the dots for the eye; results are in the tables.</remarks>
internal static class OutcomeFigure
{
    private const int Width = 800;
    private const int Height = 344;
    private const int Left = 66;
    private const int Bottom = 52;
    private const int Above = 36;
    private const int Right = 104;
    private const double HalfSlot = 0.36;
    private const int LineHeight = 15;

    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("d MMM");

    /// <summary>Draws; null when the player has no counted swing of the outcome.</summary>
    public static Figure? Draw(StudyReport report, OutcomeMeasure outcome, string participant)
    {
        var display = new ValueDisplay(report.Dictionary[outcome.Variable]);
        var sessions = SessionsOf(report, outcome.Variable, participant);
        var counted = sessions.SelectMany(session => session.Counted).ToList();
        if (counted.Count == 0)
            return null;
        var shown = counted.Select(swing => display.Value(swing.Value)).ToList();
        var baseline = BaselineOf(report, sessions, display);
        var worthwhile = outcome.SmallestWorthwhile is { } smallest ? display.Difference(smallest.Amount) : (double?)null;
        var (low, high) = Limits(shown, baseline, worthwhile);
        var title = Sheet.Wrapped(display.Label, Sheet.Normal, Height - Bottom - Above);
        var left = Left + Sheet.LeftTitleRoom(display.Label, Height - Bottom - Above);
        var plot = Sheet.Empty(left, Bottom);
        var field = new AxisLimits(0.4, sessions.Count + 0.6, low, high);
        Sheet.Frame(plot, field, new PixelSize(Width - left, Height - Bottom), Above, Right);
        DrawPhases(plot, report, sessions, low, high, Width - left - Right);
        if (baseline is { } level)
            DrawReferences(plot, report, outcome, participant, display, level, worthwhile, field);
        for (var i = 0; i < sessions.Count; i++)
            DrawSession(plot, sessions[i], i + 1, display, low, high);
        Sheet.Stroke(plot, field.Left, low, field.Right, low, Palette.Quiet, 1.5f);
        plot.Axes.Bottom.SetTicks(
            [.. Enumerable.Range(1, sessions.Count).Select(i => (double)i)],
            [.. sessions.Select((session, i) => session.Day is { } day ? Day.Format(day) : string.Create(CultureInfo.InvariantCulture, $"{i + 1}"))]);
        var steps = Sheet.Steps(low, high, 6);
        plot.Axes.Left.SetTicks(steps, Sheet.Texts(steps));
        plot.YLabel(title);
        plot.XLabel("Session");
        var excluded = sessions.Sum(session => session.Swings.Count - session.Counted.Count);
        return Sheet.Finish(
            plot,
            $"{outcome.Variable.Replace('_', '-')}-{participant}",
            $"{display.Title} of {participant} by session. Dots: counted swings in their order; bars: session means; band: what own noise alone can do to a phase mean; hollow circles: excluded swings, as triangles beyond the axis.",
            AltText(report, outcome, participant, display, sessions, excluded),
            Width,
            Height);
    }

    private static List<PlottedSession> SessionsOf(StudyReport report, string variable, string participant) =>
    [
        .. report.Tables.Swings[variable].Where(swing => swing.Participant == participant)
            .GroupBy(swing => swing.Session, StringComparer.Ordinal)
            .Select(group => new PlottedSession(
                report.Protocol.Phases.FirstOrDefault(phase => phase.Name == group.First().Phase),
                group.First().Phase,
                group.Min(swing => swing.StruckAt) is { } start ? start.InZone(report.Zone).Date : null,
                [.. group])),
    ];

    private static double? BaselineOf(StudyReport report, List<PlottedSession> sessions, ValueDisplay display)
    {
        var means = sessions.Where(session => session.Phase?.Role == PhaseRole.Baseline && session.Counted.Count > 0).Select(session => session.Mean(display)).ToList();
        return means.Count == 0 ? null : means.Average();
    }

    private static (double Low, double High) Limits(List<double> shown, double? baseline, double? worthwhile)
    {
        var low = Math.Min(shown.Min(), baseline ?? double.MaxValue);
        var high = Math.Max(shown.Max(), baseline + worthwhile ?? double.MinValue);
        var pad = Math.Max(0.08 * (high - low), 1e-6 * Math.Max(1, Math.Abs(high)));
        return (low - pad, high + pad);
    }

    private static void DrawPhases(Plot plot, StudyReport report, List<PlottedSession> sessions, double low, double high, float wide)
    {
        var start = 0;
        for (var i = 1; i <= sessions.Count; i++)
        {
            if (i < sessions.Count && sessions[i].PhaseName == sessions[start].PhaseName)
                continue;
            var (left, right) = (start == 0 ? 0.4 : start + 0.5, i == sessions.Count ? i + 0.6 : i + 0.5);
            var role = sessions[start].Phase?.Role;
            Sheet.Fill(plot, left, right, low, high, Palette.TintOf(role));
            if (start > 0)
                Sheet.Stroke(plot, left, low, left, high, Palette.Quiet, 1, LinePattern.Dashed);
            Sheet.Beside(
                plot,
                Sheet.Wrapped((sessions[start].PhaseName ?? "no phase").Replace('-', ' '), Sheet.Small, (right - left) * wide / (sessions.Count + 0.2)),
                (left + right) / 2,
                high,
                Alignment.LowerCenter,
                Palette.OfPhase(role),
                Sheet.Small,
                down: -4);
            start = i;
        }
    }

    /// <summary>The baseline's mean, what own noise can do around it, and the smallest worthwhile change from it, with their names in the margin.</summary>
    private static void DrawReferences(
        Plot plot, StudyReport report, OutcomeMeasure outcome, string participant, ValueDisplay display, double level, double? worthwhile, AxisLimits field)
    {
        var (left, right) = (field.Left, field.Right);
        var names = new List<(string Text, double At, Color Color)> { ("baseline mean", level, Palette.Ink) };
        if (NoiseOf(report, outcome.Variable, participant) is { } noise)
        {
            var half = display.Difference(noise);
            var (bottom, top) = (Math.Max(level - half, field.Bottom), Math.Min(level + half, field.Top));
            Sheet.Fill(plot, left, right, bottom, top, Palette.Quiet.WithAlpha(0.13));
            names.Add(("own noise", (bottom + level) / 2, Palette.Quiet));
        }

        Sheet.Stroke(plot, left, level, right, level, Palette.Ink, 1.2f);
        if (worthwhile is { } amount)
        {
            var change = report.Dictionary[outcome.Variable].Better == Domain.Variables.Better.Lower ? -amount : amount;
            Sheet.Stroke(plot, left, level + change, right, level + change, Palette.BluishGreen, 1.6f, LinePattern.Dotted);
            names.Add(($"worthwhile\n{ValueDisplay.WithUnit(display.Signed(change), display.Symbol)}", level + change, Palette.GreenText));
        }

        var point = field.VerticalSpan / (Height - Bottom - Above);
        var places = Sheet.Apart([.. names.Select(name => (name.At - field.Bottom) / point)], [.. names.Select(name => (float)LineHeight * name.Text.Split('\n').Length)], Height - Bottom - Above);
        foreach (var ((text, _, color), place) in names.Zip(places))
            Sheet.Beside(plot, text, right, field.Bottom, Alignment.MiddleLeft, color, Sheet.Small, right: 5, down: -(float)place);
    }

    /// <summary>
    /// How far the mean of another phase may lie from the baseline by the player's own noise: half the interval of the change from baseline, canonical unit.
    /// </summary>
    private static double? NoiseOf(StudyReport report, string variable, string participant) => report.Protocol.Contrasts
        .Where(contrast => report.Protocol.Phase(contrast.From)?.Role == PhaseRole.Baseline)
        .SelectMany(contrast => report.Tables.Effects.Where(row =>
            row.Contrast == contrast.Name && row.Participant == participant && row.Outcome == variable && row.Measure == ChangeFigure.Measure))
        .Where(row => double.IsFinite(row.Low) && double.IsFinite(row.High))
        .Select(row => (double?)((row.High - row.Low) / 2)).FirstOrDefault();

    private static void DrawSession(Plot plot, PlottedSession session, int slot, ValueDisplay display, double low, double high)
    {
        var color = Palette.OfPhase(session.Phase?.Role);
        var count = session.Swings.Count;
        for (var i = 0; i < count; i++)
        {
            var swing = session.Swings[i];
            var x = slot + (count == 1 ? 0 : (((2.0 * i) / (count - 1)) - 1) * HalfSlot);
            var y = display.Value(swing.Value);
            if (swing.Counts)
                Sheet.Mark(plot, x, y, MarkerShape.FilledCircle, 4.5f, color.WithAlpha(0.38));
            else if (y > high || y < low)
                Sheet.Mark(plot, x, y > high ? high - (0.03 * (high - low)) : low + (0.03 * (high - low)), y > high ? MarkerShape.OpenTriangleUp : MarkerShape.OpenTriangleDown, 8, Palette.Vermillion);
            else
                Sheet.Mark(plot, x, y, MarkerShape.OpenCircle, 6, Palette.Vermillion);
        }

        if (session.Counted.Count == 0)
            return;
        var mean = session.Mean(display);
        Sheet.Stroke(plot, slot - HalfSlot, mean, slot + HalfSlot, mean, color, 3);
    }

    private static string AltText(StudyReport report, OutcomeMeasure outcome, string participant, ValueDisplay display, List<PlottedSession> sessions, int excluded)
    {
        var phases = sessions.Where(session => session.Counted.Count > 0).GroupBy(session => session.PhaseName ?? "no phase").Select(group =>
        {
            var means = group.Select(session => session.Mean(display)).ToList();
            var range = means.Count == 1
                ? ValueDisplay.Number(means[0], display.Decimals)
                : $"{ValueDisplay.Number(means.Min(), display.Decimals)} to {ValueDisplay.Number(means.Max(), display.Decimals)}";
            return $"{group.Key.Replace('-', ' ')}, {Counted(group.Count(), "session")}, mean {range}";
        });
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{display.Label} of {participant} by session: {string.Join("; ", phases)}. {Counted(sessions.Sum(session => session.Counted.Count), "counted swing")}, {excluded} excluded.{Found(report, outcome.Variable, participant)}");
    }

    /// <summary>What the findings say of the player's planned comparisons.</summary>
    private static string Found(StudyReport report, string variable, string participant)
    {
        var found = report.Tables.Findings.Where(finding => finding.IsPlanned && finding.Participant == participant && finding.Outcome == variable)
            .Select(finding => $"{Documents.Comparisons.ContrastOf(report, finding.Contrast)} {finding.Verdict}").ToList();
        return found.Count == 0 ? "" : $" Change: {string.Join("; ", found)}.";
    }

    private static string Counted(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    private sealed record PlottedSession(Phase? Phase, string? PhaseName, LocalDate? Day, IReadOnlyList<ReportedSwing> Swings)
    {
        public IReadOnlyList<ReportedSwing> Counted { get; } = [.. Swings.Where(swing => swing.Counts)];

        public double Mean(ValueDisplay display) => Counted.Average(swing => display.Value(swing.Value));
    }
}
