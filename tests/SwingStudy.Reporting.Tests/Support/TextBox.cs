using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SwingStudy.Reporting.Figures;

namespace SwingStudy.Reporting.Tests.Support;

/// <summary>Where a text of a drawing lies, points, y downward: from its first to its last letter, from the height of capitals to the line.</summary>
internal sealed partial record TextBox(string Text, double Left, double Right, double Top, double Bottom)
{
    /// <summary>Height of capitals of the shipped font, in sizes (DejaVu Sans: 1493 of 2048 units).</summary>
    private const double Capital = 0.729;

    /// <summary>Texts of a figure that are cut at its edge or at the field that clips them, and pairs that cover each other.</summary>
    public static List<string> Faults(Figure figure)
    {
        var svg = XDocument.Parse(figure.Svg).Root!;
        var clips = svg.Elements().Where(element => element.Name.LocalName == "clipPath").ToDictionary(element => element.Attribute("id")!.Value, element => Field(element.Elements().Single()));
        var boxes = svg.Descendants().Where(element => element.Name.LocalName == "text")
            .Select(element => (Box: Of(element), Field: ClipOf(element, clips) ?? new TextBox("", 0, figure.Width, 0, figure.Height))).ToList();
        List<string> faults = [.. boxes.Where(pair => !pair.Box.IsWithin(pair.Field)).Select(pair => $"'{pair.Box.Text}' is cut: {pair.Box} in {pair.Field}")];
        for (var i = 0; i < boxes.Count; i++)
            faults.AddRange(boxes.Skip(i + 1).Where(other => boxes[i].Box.Covers(other.Box)).Select(other => $"'{boxes[i].Box.Text}' and '{other.Box.Text}' cover each other"));
        return faults;
    }

    private static TextBox Of(XElement element)
    {
        var size = Number(element.Attribute("font-size")!.Value);
        var (x, y) = (Numbers(element.Attribute("x")!.Value), Numbers(element.Attribute("y")!.Value)[0]);
        var text = element.Value.Trim();
        var end = x[^1] + ShippedFont.WidthOf(text[^1..], (float)size);
        var place = Transform().Match(element.Attribute("transform")?.Value ?? "translate(0 0)");
        var at = Numbers(place.Groups[2].Value);
        if (at.Length == 2 || at.Length == 1)
            return new(text, at[0] + x[0], at[0] + end, (at.Length == 2 ? at[1] : 0) + y - (Capital * size), (at.Length == 2 ? at[1] : 0) + y);
        // matrix(0 -1 1 0 e f): turned to read upward.
        return new(text, at[4] + y - (Capital * size), at[4] + y, at[5] - end, at[5] - x[0]);
    }

    private static TextBox? ClipOf(XElement element, Dictionary<string, TextBox> clips) =>
        element.AncestorsAndSelf().Select(part => part.Attribute("clip-path")?.Value).OfType<string>().FirstOrDefault() is { } clip ? clips[clip[5..^1]] : null;

    private static TextBox Field(XElement rectangle)
    {
        double Value(string name) => rectangle.Attribute(name) is { } attribute ? Number(attribute.Value) : 0;
        return new("", Value("x"), Value("x") + Value("width"), Value("y"), Value("y") + Value("height"));
    }

    private bool IsWithin(TextBox field) => Left >= field.Left - 0.5 && Right <= field.Right + 0.5 && Top >= field.Top - 0.5 && Bottom <= field.Bottom + 0.5;

    private bool Covers(TextBox other) => Left < other.Right - 0.5 && other.Left < Right - 0.5 && Top < other.Bottom - 0.5 && other.Top < Bottom - 0.5;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double[] Numbers(string text) => [.. text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    [GeneratedRegex(@"(translate|matrix)\(([^)]*)\)")]
    private static partial Regex Transform();
}
