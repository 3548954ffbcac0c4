using System.Globalization;
using ScottPlot;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>The way of the records: lines read, rows taken, captures linked, swings, swings counted; what leaves at each step stands beside it.</summary>
internal static class FlowFigure
{
    private const string Captures = "Captures in a swing";
    private const int Width = 800;
    private const int Height = 500;

    /// <summary>Draws.</summary>
    public static Figure Draw(StudyReport report)
    {
        var steps = StepsOf(report);
        var plot = Sheet.Empty(0, 0);
        plot.Axes.Left.IsVisible = false;
        plot.Axes.Bottom.IsVisible = false;
        plot.Axes.SetLimits(0, Width, 0, Height);
        var pitch = (Height - 20.0) / steps.Count;
        const double boxHeight = 54;
        for (var i = 0; i < steps.Count; i++)
        {
            var top = Height - 12 - (i * pitch);
            Box(plot, 24, 324, top - boxHeight, top, steps[i].Word, steps[i].Count);
            if (i + 1 == steps.Count)
                break;
            if (steps[i].Word == Captures)
                Sheet.Beside(plot, "several devices see one swing", 390, top - ((boxHeight + pitch) / 2), Alignment.MiddleLeft, Palette.Quiet, 13);
            var (from, to) = (top - boxHeight, top - pitch);
            Arrow(plot, 174, from, 174, to + 3);
            if (steps[i].Leaving.Count == 0)
                continue;
            var middle = (from + to) / 2;
            Arrow(plot, 174, middle, 382, middle);
            Leaving(plot, steps[i].Leaving, 390, middle);
        }

        return Sheet.Finish(
            plot,
            "flow-of-records",
            "From lines read to swings counted. What leaves stands on the right with its reason; nothing is deleted.",
            string.Join(" ", steps.Select(step => $"{step.Word}: {Text(step.Count)}."
                + (step.Leaving.Count == 0 ? "" : " Then leave " + string.Join(", ", step.Leaving.Select(part => $"{Text(part.Count)} {part.Reason}")) + "."))),
            Width,
            Height);
    }

    /// <summary>The steps with their counts.</summary>
    internal static IReadOnlyList<FlowStep> StepsOf(StudyReport report)
    {
        var (intake, tables) = (report.Intake, report.Tables);
        var captures = tables.Links.Values.Sum();
        var unlinked = tables.Unlinked.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => new FlowLoss(pair.Value, $"captures in no swing: {(pair.Key.Length == 0 ? "no reason given" : pair.Key.Replace('-', ' '))}"));
        var excluded = tables.AllSwings - tables.PracticeSwings - tables.IncludedSwings;
        return
        [
            new("Lines read", intake.LinesRead, [.. Some(intake.LinesNotData, "not data: headings, averages, repeats"), .. Some(intake.RowsRejected, "rejected, raw text kept")]),
            new("Rows taken", intake.RowsTaken, [.. Some(captures == 0 ? 0 : intake.RowsTaken - captures, "no captures: session rows, parts of long tables"), .. unlinked]),
            new(Captures, tables.LinkedCaptures, []),
            new("Swings", tables.AllSwings, [.. Some(tables.PracticeSwings, "practice swings"), .. Some(excluded, "excluded whole, by a rule or a decision")]),
            new("Swings counted", tables.IncludedSwings, []),
        ];
    }

    private static IEnumerable<FlowLoss> Some(long count, string reason) => count > 0 ? [new(count, reason)] : [];

    private static void Box(Plot plot, double left, double right, double bottom, double top, string word, long count)
    {
        var box = plot.Add.Rectangle(left, right, bottom, top);
        box.FillColor = Palette.SkyBlue.WithAlpha(0.14);
        box.LineColor = Palette.Blue;
        box.LineWidth = 1.2f;
        Sheet.Beside(plot, word, left + 14, (top + bottom) / 2, Alignment.MiddleLeft, Palette.Ink, 14);
        Sheet.Beside(plot, Text(count), right - 14, (top + bottom) / 2, Alignment.MiddleRight, Palette.Ink, 17);
    }

    private static void Leaving(Plot plot, IReadOnlyList<FlowLoss> parts, double x, double middle)
    {
        const double pitch = 17;
        var top = middle + ((parts.Count - 1) * pitch / 2);
        for (var i = 0; i < parts.Count; i++)
            Sheet.Beside(plot, $"{Text(parts[i].Count)}  {parts[i].Reason}", x, top - (i * pitch), Alignment.MiddleLeft, Palette.Quiet, 12.5f);
    }

    private static void Arrow(Plot plot, double x1, double y1, double x2, double y2)
    {
        Sheet.Stroke(plot, x1, y1, x2, y2, Palette.Quiet, 1.2f);
        var (dx, dy) = (Math.Sign(x2 - x1), Math.Sign(y2 - y1));
        Sheet.Stroke(plot, x2, y2, x2 - (7 * dx) - (4 * dy), y2 - (7 * dy) - (4 * dx), Palette.Quiet, 1.2f);
        Sheet.Stroke(plot, x2, y2, x2 - (7 * dx) + (4 * dy), y2 - (7 * dy) + (4 * dx), Palette.Quiet, 1.2f);
    }

    /// <summary>A count with a thin blank between thousands.</summary>
    internal static string Text(long count) => count.ToString("N0", CultureInfo.InvariantCulture).Replace(',', '\u2009');
}
