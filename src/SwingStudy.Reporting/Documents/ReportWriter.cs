using System.Globalization;
using System.Reflection;
using NodaTime.Text;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Writes the report of a study as one HTML file that needs neither network nor scripts.</summary>
public static class ReportWriter
{
    private static readonly InstantPattern Moment = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm 'UTC'");

    /// <summary>The report of the whole study.</summary>
    public static string Study(StudyReport report) => Page(report);

    /// <summary>The report of one player: own findings and figures only.</summary>
    /// <exception cref="ArgumentException">No finding, effect or swing of the tables belongs to that player.</exception>
    public static string Player(StudyReport report, string participant) => ParticipantsOf(report).Contains(participant, StringComparer.Ordinal)
        ? PlayerPage.Write(report, participant)
        : throw new ArgumentException($"The tables know no player {participant}.", nameof(participant));

    /// <summary>Players with a swing, an effect or a finding.</summary>
    public static IReadOnlyList<string> ParticipantsOf(StudyReport report) =>
    [
        .. report.Tables.Swings.Values.SelectMany(swings => swings).Select(swing => swing.Participant)
            .Concat(report.Tables.Effects.Select(row => row.Participant))
            .Concat(report.Tables.Findings.Select(row => row.Participant).OfType<string>())
            .Distinct().Order(StringComparer.Ordinal),
    ];

    private static string Page(StudyReport report)
    {
        var html = Begin(report.Name, report.Protocol.Question)
            .Markup($"""<nav aria-label="Contents"><ul><li><a href="#findings">Findings</a></li><li><a href="#together">Players together</a></li><li><a href="#changes">Changes</a></li><li><a href="#sessions">Sessions</a></li>{(ForceSection.IsPartOf(report) ? "<li><a href=\"#forces\">Forces</a></li>" : "")}{(CurveSection.IsPartOf(report) ? "<li><a href=\"#curves\">Curves</a></li>" : "")}<li><a href="#participants">Participants</a></li><li><a href="#deviations">Deviations</a></li><li><a href="#accounting">Accounting</a></li><li><a href="#methods">Methods</a></li><li><a href="#limits">Limits</a></li><li><a href="#cautions">Cautions</a></li><li><a href="#provenance">Provenance</a></li></ul></nav>""");
        html.Markup("<section class=\"caution\" aria-label=\"Before you read\">")
            .Element("p", "Each player is compared with that player's own baseline, which is no norm. SwingStudy is not a medical device and gives no diagnosis.")
            .Markup("</section>");
        FindingSections.Findings(html, report);
        GroupSection.Write(html, report);
        FindingSections.Changes(html, report);
        html.Markup("<section id=\"sessions\">").Element("h2", "Sessions, player by player");
        foreach (var player in ParticipantsOf(report))
        {
            var figures = ReportFigures.Sessions(report, player);
            html.Element("h3", $"Player {player}");
            if (figures.Count == 0)
                html.Element("p", "No counted swing of a primary outcome.");
            foreach (var figure in figures)
                Show(html, figure);
        }

        html.Markup("</section>");
        ForceSection.Players(html, report);
        CurveSection.Players(html, report);
        ParticipantsSection.Write(html, report);
        DeviationsSection.Write(html, report);
        AccountingSection.Write(html, report);
        MethodsSection.Write(html, report);
        LimitsSection.Write(html, report);
        SafetySection.Write(html, report, null);
        Provenance(html, report);
        return End(html);
    }

    /// <summary>The head of a page, up to its first heading.</summary>
    internal static Html Begin(string title, string question, string kind = "study") => new Html()
        .Markup("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
        .Element("title", title)
        .Markup($"<style>\n{Style()}</style>\n</head>\n<body class=\"{kind}\">\n<main>\n<header>")
        .Element("h1", title)
        .Element("p", question.Trim(), "class=\"question\"")
        .Markup("</header>");

    /// <summary>The finished page.</summary>
    internal static string End(Html html) => html.Markup("</main>\n</body>\n</html>").ToString();

    /// <summary>Shows a figure with its caption; the picture is part of the page.</summary>
    internal static void Show(Html html, Figure figure) => html
        .Markup("<figure>")
        .Markup(string.Create(
            CultureInfo.InvariantCulture,
            $"<img src=\"data:image/png;base64,{Convert.ToBase64String(figure.Png)}\" width=\"{figure.Width}\" height=\"{figure.Height}\" alt=\"{Html.Escape(figure.AltText)}\">"))
        .Element("figcaption", figure.Caption)
        .Markup("</figure>");

    /// <summary>What the page was made from.</summary>
    internal static void Provenance(Html html, StudyReport report)
    {
        html.Markup("<section id=\"provenance\">").Element("h2", "Provenance")
            .Element("p", "Every number above stands in one of these table versions, and 'swingstudy audit trace' leads from there to file, row and raw text.")
            .OpenTable("What this report was made from", "Thing", "Version");
        Row(html, "Protocol", $"{report.Protocol.Name} {report.Protocol.Version}, {(report.LockedAt is { } at ? $"locked {Moment.Format(at)}" : "not locked")}");
        Row(html, "Protocol hash (SHA-256)", report.Protocol.Hash.ToString());
        Row(html, "Dictionary", $"{report.Dictionary.Name} {report.Dictionary.Version}");
        Row(html, "Dictionary hash (SHA-256)", report.Dictionary.Hash.ToString());
        foreach (var (table, version) in report.Versions)
            Row(html, $"Table {table}", string.Create(CultureInfo.InvariantCulture, $"version {version}"));
        Row(html, "SwingStudy", typeof(ReportWriter).Assembly.GetName().Version!.ToString(3));
        html.CloseTable().Markup("</section>");
    }

    private static void Row(Html html, string thing, string version) =>
        html.Markup("<tr>").Element("th", thing, "scope=\"row\"").Markup("<td>").Element("code", version).Markup("</td></tr>");

    private static string Style()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css")
            ?? throw new InvalidOperationException("The program holds no report.css.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
