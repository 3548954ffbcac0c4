using System.Globalization;
using ScottPlot;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Reporting.Figures;

/// <summary>The smallest change that a player's phases can tell from noise, by swings a session and sessions a phase, beside the change to be found.</summary>
public static class PlanFigure
{
    private const int Width = 800;
    private const int Height = 460;
    private const int Left = 62;
    private const int Bottom = 52;
    private const int Above = 34;
    private const int Right = 150;
    private const int LabelHeight = 18;

    /// <summary>Draws.</summary>
    /// <param name="variable">The outcome.</param>
    /// <param name="change">Size of the change to be found, canonical unit.</param>
    /// <param name="lines">One line a number of sessions, most sessions last; all over the same swings.</param>
    /// <param name="planned">Sessions and swings that the protocol asks for.</param>
    /// <exception cref="ArgumentException">There is no line, or one without points.</exception>
    public static Figure Draw(Variable variable, double change, IReadOnlyList<PlanLine> lines, (int Sessions, int Swings, double Detectable) planned)
    {
        if (lines.Count == 0 || lines.Any(line => line.Points.Count < 2))
            throw new ArgumentException("A figure of a plan needs lines of two points or more.", nameof(lines));
        var display = new ValueDisplay(variable);
        double least = lines.Min(line => line.Points[0].Swings), most = lines.Max(line => line.Points[^1].Swings);
        var high = 1.04 * lines.SelectMany(line => line.Points).Select(point => display.Difference(point.Detectable)).Append(1.15 * display.Difference(change)).Max();
        var plot = Sheet.Empty(Left, Bottom);
        Sheet.Frame(plot, new AxisLimits(least, most, 0, high), new PixelSize(Width - Left, Height - Bottom), Above, Right);
        Frame(plot, least, most, high, display, change);
        var point = high / (Height - Bottom - Above);
        var labels = Sheet.Apart([.. lines.Select(line => display.Difference(line.Points[^1].Detectable) / point)], [.. lines.Select(_ => (double)LabelHeight)], Height - Bottom - Above)
            .Select(place => place * point);
        foreach (var (line, label) in lines.Zip(labels))
            DrawLine(plot, line, label, line.Sessions == planned.Sessions, display);
        if (planned.Swings >= least && planned.Swings <= most)
            Sheet.Mark(plot, planned.Swings, display.Difference(planned.Detectable), MarkerShape.FilledCircle, 10, Palette.Vermillion);
        Sheet.Beside(plot, FormattableString.Invariant($"planned: {planned.Sessions} sessions of {planned.Swings} swings"), least, high, Alignment.LowerLeft, Palette.VermillionText, Sheet.Small, down: -7);
        return Sheet.Finish(plot, $"plan-{variable.Name.Replace('_', '-')}", Caption(display), AltText(display, change, planned), Width, Height);
    }

    private static void Frame(Plot plot, double least, double most, double high, ValueDisplay display, double change)
    {
        Sheet.Stroke(plot, least, 0, most, 0, Palette.Quiet, 1.5f);
        Sheet.Stroke(plot, least, 0, least, high, Palette.Quiet, 1.5f);
        Sheet.Fill(plot, least, most, 0, display.Difference(change), Palette.BluishGreen.WithAlpha(0.09));
        Sheet.Stroke(plot, least, display.Difference(change), most, display.Difference(change), Palette.BluishGreen, 1.6f, LinePattern.Dotted);
        Sheet.Beside(plot, Format(display, change, "change to be found "), most, display.Difference(change), Alignment.LowerRight, Palette.GreenText, Sheet.Small, right: -6, down: -3);
        var across = Sheet.Steps(0, most, 8).Where(step => step >= least).Prepend(least).Distinct().ToArray();
        plot.Axes.Bottom.SetTicks(across, [.. across.Select(step => step.ToString("0", CultureInfo.InvariantCulture))]);
        var up = Sheet.Steps(0, high, 6);
        plot.Axes.Left.SetTicks(up, Sheet.Texts(up));
        plot.XLabel("Swings a session");
        plot.YLabel(display.Symbol.Length == 0 ? "Smallest detectable change" : $"Smallest detectable change ({display.Symbol})");
    }

    private static void DrawLine(Plot plot, PlanLine line, double label, bool isPlanned, ValueDisplay display)
    {
        var color = isPlanned ? Palette.Vermillion : Palette.Blue;
        foreach (var (from, to) in line.Points.Zip(line.Points.Skip(1)))
            Sheet.Stroke(plot, from.Swings, display.Difference(from.Detectable), to.Swings, display.Difference(to.Detectable), color, isPlanned ? 2.6f : 1.8f);
        var last = line.Points[^1];
        Sheet.Beside(
            plot, FormattableString.Invariant($"{line.Sessions} {(line.Sessions == 1 ? "session" : "sessions")} a phase"), last.Swings, label, Alignment.MiddleLeft, isPlanned ? Palette.VermillionText : Palette.Blue, Sheet.Normal,
            right: 10);
    }

    private static string Caption(ValueDisplay display) =>
        $"Smallest change in {Lower(display.Title)} of one player that can be told from noise. Each line falls toward what the scatter between days leaves: more swings in one day cannot beat it";

    private static string AltText(ValueDisplay display, double change, (int Sessions, int Swings, double Detectable) planned) => FormattableString.Invariant(
        $"With {planned.Sessions} sessions of {planned.Swings} swings, {Format(display, planned.Detectable, "")} can be told from noise; {Format(display, change, "")} is to be found.");

    private static string Format(ValueDisplay display, double amount, string before) =>
        before + ValueDisplay.WithUnit(ValueDisplay.Number(display.Difference(amount), Math.Max(display.Decimals, 2)), display.Symbol);

    private static string Lower(string title) => title.Length > 1 && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;
}
