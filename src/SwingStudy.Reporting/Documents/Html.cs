using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace SwingStudy.Reporting.Documents;

/// <summary>Text of an HTML page that grows; what comes from data is always escaped.</summary>
internal sealed class Html
{
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);
    private readonly StringBuilder _text = new();

    /// <summary>Appends mark-up as it is, and a line break.</summary>
    public Html Markup(string markup)
    {
        _text.Append(markup).Append('\n');
        return this;
    }

    /// <summary>Appends an element that holds a text.</summary>
    public Html Element(string name, string text, string attributes = "")
    {
        _text.Append('<').Append(name).Append(attributes.Length == 0 ? "" : " ").Append(attributes).Append('>').Append(Escape(text)).Append("</").Append(name).Append(">\n");
        return this;
    }

    /// <summary>Appends a list of texts; nothing when there are none.</summary>
    public Html List(IEnumerable<string> items)
    {
        var all = items.ToList();
        if (all.Count == 0)
            return this;
        Markup("<ul>");
        foreach (var item in all)
            Element("li", item);
        return Markup("</ul>");
    }

    /// <summary>Appends what a reader opens to see it, under a line that says what is inside; paper shows it open.</summary>
    /// <param name="summary">The line.</param>
    /// <param name="inside">Writes what is inside.</param>
    /// <param name="heading">Name of a heading element for the line; null for plain text.</param>
    public Html Folded(string summary, Action<Html> inside, string? heading = null)
    {
        Markup("<details><summary>").Element(heading ?? "span", summary).Markup("</summary>");
        inside(this);
        return Markup("</details>");
    }

    /// <summary>Appends a table cell that holds a number.</summary>
    public Html Number(string text) => Element("td", text, "class=\"number\"");

    /// <summary>Opens a table with caption and headings; headings that start with <c>#</c> stand over numbers.</summary>
    public Html OpenTable(string caption, params ReadOnlySpan<string> headings) => OpenTableOf("plain", caption, headings);

    /// <summary>The same for a table of a kind that the style treats of its own.</summary>
    public Html OpenTableOf(string kind, string caption, params ReadOnlySpan<string> headings)
    {
        Markup($"<div class=\"wide\"><table class=\"{kind}\">").Element("caption", caption).Markup("<thead><tr>");
        foreach (var heading in headings)
            Element("th", heading.TrimStart('#'), heading.StartsWith('#') ? "scope=\"col\" class=\"number\"" : "scope=\"col\"");
        return Markup("</tr></thead><tbody>");
    }

    /// <summary>Appends a row that names what the rows below it are about.</summary>
    public Html GroupHeading(string text, int columns) =>
        Markup("<tr class=\"group\">").Element("th", text, FormattableString.Invariant($"scope=\"rowgroup\" colspan=\"{columns}\"")).Markup("</tr>");

    /// <summary>Closes a table.</summary>
    public Html CloseTable() => Markup("</tbody></table></div>");

    /// <summary>Escapes a text for elements and quoted attributes.</summary>
    public static string Escape(string text) => Encoder.Encode(text);

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();
}
