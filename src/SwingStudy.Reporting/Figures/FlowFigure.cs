using System.Globalization;
using ScottPlot;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>The way of the records: lines read, rows taken, captures linked, swings, swings counted; what leaves at each step stands beside it.</summary>
internal static class FlowFigure
{
    private const string Captures = "Captures in a swing";
    private const int Width = 800;
    private const int BoxHeight = 54;
    private const int Gap = 42;
    private const int Edge = 12;
    private const int LinePitch = 17;

    /// <summary>Where what leaves is written.</summary>
    private const int Beside = 390;

    /// <summary>Draws.</summary>
    public static Figure Draw(StudyReport report)
    {
        var steps = StepsOf(report);
        var leaving = steps.Select(step => LinesOf(step.Leaving)).ToList();
        List<int> gaps = [.. leaving.Take(steps.Count - 1).Select(lines => Math.Max(Gap, (lines.Count * LinePitch) - 10))];
        var height = (2 * Edge) + (steps.Count * BoxHeight) + gaps.Sum();
        var plot = Sheet.Empty(0, 0);
        plot.Axes.Left.IsVisible = false;
        plot.Axes.Bottom.IsVisible = false;
        plot.Axes.SetLimits(0, Width, 0, height);
        double top = height - Edge;
        for (var i = 0; i < steps.Count; i++)
        {
            Box(plot, 24, 324, top - BoxHeight, top, steps[i].Word, steps[i].Count);
            if (i + 1 == steps.Count)
                break;
            var from = top - BoxHeight;
            top = from - gaps[i];
            var middle = (from + top) / 2;
            if (steps[i].Word == Captures)
                Sheet.Beside(plot, "several devices see one swing", Beside, middle, Alignment.MiddleLeft, Palette.Quiet, 13);
            Arrow(plot, 174, from, 174, top + 3);
            if (leaving[i].Count == 0)
                continue;
            Arrow(plot, 174, middle, Beside - 8, middle);
            Leaving(plot, leaving[i], middle);
        }

        return Sheet.Finish(
            plot,
            "flow-of-records",
            "From lines read to swings counted. What leaves stands on the right with its reason; nothing is deleted.",
            string.Join(" ", steps.Select(step => $"{step.Word}: {Text(step.Count)}."
                + (step.Leaving.Count == 0 ? "" : " Then leave " + string.Join(", ", step.Leaving.Select(part => $"{Text(part.Count)} {part.Reason}")) + "."))),
            Width,
            height);
    }

    /// <summary>The steps with their counts.</summary>
    internal static IReadOnlyList<FlowStep> StepsOf(StudyReport report)
    {
        var (intake, tables) = (report.Intake, report.Tables);
        var captures = tables.Links.Values.Sum();
        var unlinked = tables.Unlinked.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => new FlowLoss(pair.Value, $"in no swing: {Documents.LinkWords.Of(pair.Key)}"));
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

    /// <summary>Reasons on lines as wide as the figure leaves room for, their counts on the first line of each.</summary>
    private static List<(string Count, string Words)> LinesOf(IReadOnlyList<FlowLoss> parts)
    {
        var room = Width - Beside - 20 - Column(parts);
        return [.. parts.SelectMany(part => Sheet.Wrapped(part.Reason, Sheet.Normal, room).Split('\n').Select((line, i) => (i == 0 ? Text(part.Count) : "", line)))];
    }

    private static float Column(IReadOnlyList<FlowLoss> parts) => parts.Select(part => ShippedFont.WidthOf(Text(part.Count), Sheet.Normal)).DefaultIfEmpty().Max();

    private static void Leaving(Plot plot, List<(string Count, string Words)> lines, double middle)
    {
        var column = Beside + lines.Max(line => ShippedFont.WidthOf(line.Count, Sheet.Normal));
        var top = middle + ((lines.Count - 1) * LinePitch / 2.0);
        for (var i = 0; i < lines.Count; i++)
        {
            Sheet.Beside(plot, lines[i].Count, column, top - (i * LinePitch), Alignment.MiddleRight, Palette.Quiet, Sheet.Normal);
            Sheet.Beside(plot, lines[i].Words, column + 10, top - (i * LinePitch), Alignment.MiddleLeft, Palette.Quiet, Sheet.Normal);
        }
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
