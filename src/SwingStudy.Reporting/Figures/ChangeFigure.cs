using System.Globalization;
using ScottPlot;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>The change of each player in one contrast with its interval, beside zero and the smallest worthwhile change.</summary>
internal static class ChangeFigure
{
    /// <summary>Effect measure that is drawn.</summary>
    public const string Measure = "difference";

    private const int Width = 800;
    private const int RowHeight = 34;
    private const int Least = 52;
    private const int Gap = 12;
    private const int Bottom = 52;
    private const int Above = 30;

    /// <summary>Draws; null when no player has a change in that contrast.</summary>
    public static Figure? Draw(StudyReport report, OutcomeMeasure outcome, Contrast contrast)
    {
        var rows = report.Tables.Effects
            .Where(row => row.Outcome == outcome.Variable && row.Contrast == contrast.Name && row.Measure == Measure)
            .OrderBy(row => row.Participant, StringComparer.Ordinal).ToList();
        if (!rows.Exists(row => double.IsFinite(row.Estimate)))
            return null;
        var variable = report.Dictionary[outcome.Variable];
        var display = new ValueDisplay(variable);
        var verdicts = report.Tables.Findings
            .Where(finding => finding.Participant is not null && finding.Outcome == outcome.Variable && finding.Contrast == contrast.Name)
            .GroupBy(finding => finding.Participant!).ToDictionary(group => group.Key, group => group.First().Verdict, StringComparer.Ordinal);
        var worthwhile = outcome.SmallestWorthwhile is { } smallest
            ? display.Difference(smallest.Amount) * (variable.Better == Better.Lower ? -1 : 1)
            : (double?)null;
        var together = report.Tables.Group.FirstOrDefault(row => row.Outcome == outcome.Variable && row.Contrast == contrast.Name && row.Measure == GroupRow.Difference && double.IsFinite(row.Low));
        var (low, high) = Limits(rows, display, worthwhile, together);
        var lines = rows.Count + (together is null ? 0 : 2);
        List<Line> drawn = [.. rows.Select(row => LineOf(row, display, DecimalsOf(rows, display), verdicts.GetValueOrDefault(row.Participant)))];
        if (together is not null)
            drawn.AddRange(LinesOf(together, display, DecimalsOf(rows, display)));
        var left = (int)Math.Ceiling(drawn.Max(line => ShippedFont.WidthOf(line.Name, Sheet.Small)) + Gap);
        left = Math.Max(left, Least);
        var numbers = drawn.Max(line => ShippedFont.WidthOf(line.Numbers, Sheet.Normal));
        var words = drawn.Max(line => ShippedFont.WidthOf(line.Word, Sheet.Normal));
        var right = numbers + words + (3.5f * Gap);
        var title = Sheet.Wrapped(ValueDisplay.LabelOf($"Change in {Lower(display.Title)}", display.Symbol), Sheet.Normal, Width - left - right);
        var bottom = Bottom + (16 * title.Count(c => c == '\n'));
        var height = Above + bottom + (RowHeight * lines);
        var plot = Sheet.Empty(left, bottom);
        Sheet.Frame(plot, new AxisLimits(low, high, 0.5, lines + 0.5), new PixelSize(Width - left, height - bottom), Above, right);
        DrawReferences(plot, display, lines, worthwhile, (low, high), Width - left - right, Width - left);
        for (var i = 0; i < rows.Count; i++)
            DrawRow(plot, rows[i], lines - i, display, verdicts.GetValueOrDefault(rows[i].Participant));
        if (together is not null)
            DrawTogether(plot, together, display, low, high);
        for (var i = 0; i < drawn.Count; i++)
        {
            Sheet.Beside(plot, drawn[i].Numbers, high, lines - i, Alignment.MiddleLeft, drawn[i].NumbersColor, Sheet.Normal, right: Gap, down: 2);
            Sheet.Beside(plot, drawn[i].Word, high, lines - i, Alignment.MiddleLeft, drawn[i].Color, Sheet.Normal, right: numbers + (2.5f * Gap), down: 2);
        }

        Sheet.Stroke(plot, low, 0.5, high, 0.5, Palette.Quiet, 1.5f);
        plot.Axes.Left.SetTicks(
            [.. Enumerable.Range(0, lines).Select(i => (double)(lines - i))], [.. drawn.Select(line => line.Name)]);
        plot.Axes.Left.MajorTickStyle.Length = 0;
        var steps = Sheet.Steps(low, high, 7);
        plot.Axes.Bottom.SetTicks(steps, Sheet.Texts(steps));
        plot.XLabel(title);
        return Sheet.Finish(
            plot,
            $"change-{outcome.Variable.Replace('_', '-')}-{contrast.Name}",
            string.Create(CultureInfo.InvariantCulture, $"Change in {Lower(display.Title)} from {Plain(contrast.From)} to {Plain(contrast.To)}, with {report.Protocol.Analysis.Confidence:P0} interval{(together is null ? "" : "; below: the mean over players, and where the true change of the next player may lie")}{(together is not null && IsCut(together, display, low, high) ? ", a bar that goes on beyond the edge" : "")}"),
            AltText(rows, display, contrast, verdicts, together),
            Width,
            height);
    }

    private static (double Low, double High) Limits(List<EffectRow> rows, ValueDisplay display, double? worthwhile, GroupRow? together)
    {
        // The next player may lie far out where players are few: the bar is then cut at the edge and its numbers stand beside it.
        var values = rows.SelectMany(row => new[] { row.Estimate, row.Low, row.High }).Where(double.IsFinite).Select(display.Difference)
            .Append(0).Append(worthwhile ?? 0).Concat(together is null ? [] : [display.Difference(together.Low), display.Difference(together.High)]).ToList();
        var pad = Math.Max(0.06 * (values.Max() - values.Min()), 1e-6);
        return (values.Min() - pad, values.Max() + pad);
    }

    /// <param name="plot">The plot.</param>
    /// <param name="display">How the outcome is shown.</param>
    /// <param name="rows">Rows of the figure.</param>
    /// <param name="worthwhile">Smallest worthwhile change; null when none is stated.</param>
    /// <param name="field">Ends of the axis.</param>
    /// <param name="wide">Width of the field, points.</param>
    /// <param name="room">Width of field and words, points.</param>
    private static void DrawReferences(Plot plot, ValueDisplay display, int rows, double? worthwhile, (double Low, double High) field, float wide, float room)
    {
        var (low, high) = field;
        var top = rows + 0.5;
        for (var i = 1; i <= rows; i += 2)
            Sheet.Fill(plot, low, high + (high - low), i - 0.5, i + 0.5, Color.FromHex("#F4F5F7"));
        Sheet.Stroke(plot, 0, 0.5, 0, top, Palette.Ink, 1.2f);
        List<(string Text, double At, Color Color)> labels = [("no change", 0, Palette.Ink)];
        if (worthwhile is { } amount)
        {
            Sheet.Stroke(plot, amount, 0.5, amount, top, Palette.BluishGreen, 1.6f, LinePattern.Dotted);
            labels.Insert(amount < 0 ? 0 : 1, ($"smallest worthwhile {ValueDisplay.WithUnit(display.Signed(amount), display.Symbol)}", amount, Palette.GreenText));
        }

        // The left label ends at its line and the right one begins there, but neither is cut and neither covers the other.
        var free = 0f;
        for (var i = 0; i < labels.Count; i++)
        {
            var (at, width) = ((float)((labels[i].At - low) / (high - low)) * wide, ShippedFont.WidthOf(labels[i].Text, Sheet.Small));
            var left = Math.Min(Math.Max(i == 0 ? at - width : at, free), room - width);
            Sheet.Beside(plot, labels[i].Text, low, top, Alignment.LowerLeft, labels[i].Color, Sheet.Small, right: left, down: -5);
            free = left + width + Gap;
        }
    }

    /// <summary>Decimals that the players' intervals leave meaning, the same for all of them.</summary>
    private static int DecimalsOf(List<EffectRow> rows, ValueDisplay display)
    {
        double[] halves = [.. rows.Select(row => display.Difference((row.High - row.Low) / 2)).Where(double.IsFinite).Order()];
        return halves.Length == 0 ? display.Decimals : display.DecimalsFor(halves[halves.Length / 2]);
    }

    private static Line LineOf(EffectRow row, ValueDisplay display, int decimals, string? verdict)
    {
        var text = "no estimate";
        if (double.IsFinite(row.Estimate))
            text = ValueDisplay.Signed(display.Difference(row.Estimate), decimals) + (double.IsFinite(row.Low) && double.IsFinite(row.High) ? "  " + Bracket(row.Low, row.High, display, decimals) : "");
        return new(row.Participant, text, Palette.Ink, verdict ?? "no finding", Palette.TextOfVerdict(verdict));
    }

    private static IEnumerable<Line> LinesOf(GroupRow together, ValueDisplay display, int decimals)
    {
        yield return new("mean", ValueDisplay.Signed(display.Difference(together.Estimate), decimals) + "  " + Bracket(together.Low, together.High, display, decimals), Palette.Ink, "mean of players", Palette.Ink);
        yield return double.IsFinite(together.PredictionLow) && double.IsFinite(together.PredictionHigh)
            ? new("next", Bracket(together.PredictionLow, together.PredictionHigh, display, decimals), Palette.Quiet, "next player", Palette.Quiet)
            : new("next", "unknown", Palette.Quiet, "next player", Palette.Quiet);
    }

    private static string Bracket(double low, double high, ValueDisplay display, int decimals) =>
        $"[{ValueDisplay.Number(display.Difference(low), decimals)}, {ValueDisplay.Number(display.Difference(high), decimals)}]";

    private static bool IsCut(GroupRow together, ValueDisplay display, double low, double high) =>
        display.Difference(together.PredictionLow) < low || display.Difference(together.PredictionHigh) > high;

    private static void DrawRow(Plot plot, EffectRow row, double y, ValueDisplay display, string? verdict)
    {
        if (!double.IsFinite(row.Estimate))
            return;
        var (color, shape) = Palette.OfVerdict(verdict);
        if (double.IsFinite(row.Low) && double.IsFinite(row.High))
        {
            var (from, to) = (display.Difference(row.Low), display.Difference(row.High));
            Sheet.Stroke(plot, from, y, to, y, color, 2);
            Sheet.Stroke(plot, from, y - 0.14, from, y + 0.14, color, 2);
            Sheet.Stroke(plot, to, y - 0.14, to, y + 0.14, color, 2);
        }

        Sheet.Mark(plot, display.Difference(row.Estimate), y, shape, 11, color, hollow: shape.ToString().StartsWith("Open", StringComparison.Ordinal));
    }

    /// <summary>The mean over players as a lozenge as wide as its interval, and the prediction interval as a bare bar.</summary>
    private static void DrawTogether(Plot plot, GroupRow together, ValueDisplay display, double low, double high)
    {
        Sheet.Stroke(plot, low, 2.5, high, 2.5, Palette.Quiet, 1);
        var (from, to, mean) = (display.Difference(together.Low), display.Difference(together.High), display.Difference(together.Estimate));
        foreach (var (x1, y1, x2, y2) in new[] { (from, 2, mean, 2.22), (mean, 2.22, to, 2), (to, 2, mean, 1.78), (mean, 1.78, from, 2.0) })
            Sheet.Stroke(plot, x1, y1, x2, y2, Palette.Ink, 2);
        if (!double.IsFinite(together.PredictionLow) || !double.IsFinite(together.PredictionHigh))
            return;
        var (least, most) = (display.Difference(together.PredictionLow), display.Difference(together.PredictionHigh));
        Sheet.Stroke(plot, Math.Max(least, low), 1, Math.Min(most, high), 1, Palette.Quiet, 5);
    }

    private static string AltText(List<EffectRow> rows, ValueDisplay display, Contrast contrast, Dictionary<string, string> verdicts, GroupRow? together)
    {
        var decimals = DecimalsOf(rows, display);
        return $"Change in {Lower(display.Title)} from {Plain(contrast.From)} to {Plain(contrast.To)}: " + string.Join("; ", rows.Select(row =>
                !double.IsFinite(row.Estimate)
                    ? $"{row.Participant} no estimate"
                    : $"{row.Participant} {Change(row.Estimate, row.Low, row.High)}{(verdicts.TryGetValue(row.Participant, out var verdict) ? $", {verdict}" : "")}"))
            + (together is null ? "" : $"; mean of players {Change(together.Estimate, together.Low, together.High)}")
            + ".";

        string Change(double estimate, double low, double high) =>
            ValueDisplay.WithUnit(ValueDisplay.Signed(display.Difference(estimate), decimals), display.Symbol)
            + (double.IsFinite(low) ? $" ({ValueDisplay.Number(display.Difference(low), decimals)} to {ValueDisplay.Number(display.Difference(high), decimals)})" : "");
    }

    private static string Plain(string name) => name.Replace('-', ' ');

    private static string Lower(string title) => title.Length > 1 && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    /// <summary>The words of one row: name on the left, numbers and verdict on the right.</summary>
    private sealed record Line(string Name, string Numbers, Color NumbersColor, string Word, Color Color);
}
