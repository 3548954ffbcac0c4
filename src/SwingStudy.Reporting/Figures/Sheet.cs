using System.Globalization;
using System.Text.RegularExpressions;
using ScottPlot;

namespace SwingStudy.Reporting.Figures;

/// <summary>An empty plot in the house's plain look, and what is drawn on it again and again.</summary>
internal static partial class Sheet
{
    /// <summary>Size of small text, points.</summary>
    public const float Small = 11.5f;

    /// <summary>Size of labels, points.</summary>
    public const float Normal = 12.5f;

    private const int Sharpness = 2;

    /// <summary>Height of a line of an axis title, points.</summary>
    private const float TitleLine = 16;

    /// <summary>The font's digits stand above the middle of their line; so far down they stand beside their tick.</summary>
    private const float DigitsDown = 2;

    private static readonly int[] RoundFactors = [1, 2, 5, 10];

    /// <summary>A plot without grid, with tick labels on the left and below; all the rest belongs to the drawing, which the library clips there.</summary>
    public static Plot Empty(float left, float bottom)
    {
        ShippedFont.Register();
        var plot = new Plot();
        plot.Font.Set(ShippedFont.Name);
        plot.HideGrid();
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Top.IsVisible = false;
        plot.Axes.Right.IsVisible = false;
        foreach (var axis in new IAxis[] { plot.Axes.Left, plot.Axes.Bottom })
        {
            axis.FrameLineStyle.Width = 0;
            axis.TickLabelStyle.FontSize = Small;
            axis.TickLabelStyle.ForeColor = Palette.Ink;
            axis.MajorTickStyle.Color = Palette.Quiet;
            axis.MajorTickStyle.Length = 4;
            axis.MinorTickStyle.Length = 0;
            axis.Label.FontSize = Normal;
            axis.Label.Bold = false;
            axis.Label.ForeColor = Palette.Ink;
        }

        plot.Axes.Left.TickLabelStyle.OffsetY = DigitsDown;
        plot.Layout.Fixed(new PixelPadding(left, 0, bottom, 0));
        return plot;
    }

    /// <summary>Sets the limits so that the data lie in a field that leaves room above and to the right for words.</summary>
    /// <param name="plot">The plot.</param>
    /// <param name="field">Limits of the data's field.</param>
    /// <param name="inside">Size of the drawing without the axes, points.</param>
    /// <param name="above">Room above the field, points.</param>
    /// <param name="right">Room to its right, points.</param>
    public static void Frame(Plot plot, AxisLimits field, PixelSize inside, float above, float right)
    {
        var x = field.Left + (field.HorizontalSpan * inside.Width / (inside.Width - right));
        var y = field.Bottom + (field.VerticalSpan * inside.Height / (inside.Height - above));
        plot.Axes.SetLimits(field.Left, x, field.Bottom, y);
        plot.Axes.Bottom.Label.OffsetX = -right / 2;
        plot.Axes.Left.Label.OffsetY = above / 2;
    }

    /// <summary>A text beside a place of the data, shifted by points.</summary>
    public static void Beside(Plot plot, string text, double x, double y, Alignment alignment, Color color, float size, float right = 0, float down = 0)
    {
        var label = plot.Add.Text(text, x, y);
        label.LabelAlignment = alignment;
        label.LabelFontName = ShippedFont.Name;
        label.LabelFontSize = size;
        label.LabelFontColor = color;
        label.OffsetX = right;
        label.OffsetY = down;
    }

    /// <summary>A text on as many lines as it needs to be no wider than <paramref name="room"/>; a word that is wider by itself stays whole.</summary>
    public static string Wrapped(string text, float size, double room)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' '))
        {
            if (lines.Count > 0 && ShippedFont.WidthOf($"{lines[^1]} {word}", size) <= room)
                lines[^1] += " " + word;
            else
                lines.Add(word);
        }

        return string.Join('\n', lines);
    }

    /// <summary>Puts the title of the vertical axis beside it, on two lines or more where it is longer than the field is high.</summary>
    /// <returns>Room that the lines beyond the first need, points.</returns>
    public static float LeftTitleRoom(string title, double height) => TitleLine * Wrapped(title, Normal, height).Count(c => c == '\n');

    /// <summary>A line between two places of the data.</summary>
    public static void Stroke(Plot plot, double x1, double y1, double x2, double y2, Color color, float width, LinePattern? pattern = null)
    {
        var line = plot.Add.Line(x1, y1, x2, y2);
        line.LineColor = color;
        line.LineWidth = width;
        line.LinePattern = pattern ?? LinePattern.Solid;
        line.MarkerSize = 0;
    }

    /// <summary>A filled rectangle of the data without outline.</summary>
    public static void Fill(Plot plot, double left, double right, double bottom, double top, Color color)
    {
        var area = plot.Add.Rectangle(left, right, bottom, top);
        area.FillColor = color;
        area.LineWidth = 0;
    }

    /// <summary>A sign at a place of the data.</summary>
    public static void Mark(Plot plot, double x, double y, MarkerShape shape, float size, Color color, bool hollow = false)
    {
        var marker = plot.Add.Marker(x, y, shape, size, color);
        marker.MarkerLineColor = color;
        marker.MarkerLineWidth = hollow || shape.ToString().StartsWith("Open", StringComparison.Ordinal) ? 1.6f : 0;
        if (hollow)
            marker.MarkerFillColor = Colors.White;
    }

    /// <summary>Round steps for an axis from <paramref name="low"/> to <paramref name="high"/>.</summary>
    public static double[] Steps(double low, double high, int most)
    {
        var raw = (high - low) / most;
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = RoundFactors.Select(factor => factor * power).First(candidate => candidate >= raw * 0.999);
        var first = Math.Ceiling(low / step);
        return [.. Enumerable.Range(0, (int)Math.Floor((high / step) - first + 1e-9) + 1).Select(i => Math.Round((first + i) * step, 9))];
    }

    /// <summary>Heights of labels, moved apart where they would cover each other, and no higher than the field where there is room below.</summary>
    /// <param name="centres">Middle of each label, points above the foot of the field.</param>
    /// <param name="heights">Height of each label, points.</param>
    /// <param name="top">Height of the field, points.</param>
    public static double[] Apart(IReadOnlyList<double> centres, IReadOnlyList<double> heights, double top)
    {
        double[] apart = [.. centres];
        int[] order = [.. Enumerable.Range(0, apart.Length).OrderBy(i => apart[i])];
        for (var i = 1; i < order.Length; i++)
            apart[order[i]] = Math.Max(apart[order[i]], apart[order[i - 1]] + ((heights[order[i - 1]] + heights[order[i]]) / 2));
        var limit = top;
        foreach (var i in order.Reverse())
        {
            apart[i] = Math.Min(apart[i], limit - (heights[i] / 2));
            limit = apart[i] - (heights[i] / 2);
        }

        return apart;
    }

    /// <summary>The steps as texts, all with the fewest decimals that tell them apart from each other exactly.</summary>
    public static string[] Texts(double[] steps)
    {
        var decimals = Enumerable.Range(0, 7).First(count => count == 6 || steps.All(step => Math.Abs(step - Math.Round(step, count)) < 1e-9));
        return [.. steps.Select(step => ValueDisplay.Number(step, decimals))];
    }

    /// <summary>The finished figure.</summary>
    public static Figure Finish(Plot plot, string name, string caption, string altText, int width, int height)
    {
        var svg = Normalised(plot.GetSvgXml(width, height));
        plot.ScaleFactor = Sharpness;
        return new(name, caption, altText, width, height, plot.GetImageBytes(width * Sharpness, height * Sharpness, ImageFormat.Png), svg);
    }

    /// <summary>Numbers the identifiers of a drawing from 1: the library numbers them through the life of the process.</summary>
    private static string Normalised(string svg)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Match match in Identifier().Matches(svg))
            names.TryAdd(match.Groups[1].Value, string.Create(CultureInfo.InvariantCulture, $"c{names.Count + 1}"));
        return Reference().Replace(svg, match => names.TryGetValue(match.Groups[2].Value, out var name)
            ? match.Groups[1].Value + name + match.Groups[3].Value
            : match.Value);
    }

    [GeneratedRegex("""\bid="([^"]+)"(?<!font-)""")]
    private static partial Regex Identifier();

    [GeneratedRegex("""(\bid="|url\(#|href="#)([^")]+)("|\))""")]
    private static partial Regex Reference();
}
