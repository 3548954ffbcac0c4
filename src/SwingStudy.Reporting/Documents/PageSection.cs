using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>One section of a page, with its place in the contents.</summary>
/// <param name="Id">Anchor.</param>
/// <param name="Heading">Heading.</param>
/// <param name="Write">Writes what stands below the heading.</param>
internal sealed record PageSection(string Id, string Heading, Action<Html, StudyReport> Write)
{
    /// <summary>Writes the contents of a page.</summary>
    public static void Contents(Html html, IEnumerable<PageSection> sections)
    {
        html.Markup("<nav aria-label=\"Contents\"><ol>");
        foreach (var section in sections)
            html.Markup($"<li><a href=\"#{section.Id}\">{Html.Escape(section.Heading)}</a></li>");
        html.Markup("</ol></nav>");
    }

    /// <summary>Writes the section.</summary>
    public void WriteTo(Html html, StudyReport report)
    {
        html.Markup($"<section id=\"{Id}\" aria-labelledby=\"{Id}-heading\">").Element("h2", Heading, $"id=\"{Id}-heading\"");
        Write(html, report);
        html.Markup("</section>");
    }
}
