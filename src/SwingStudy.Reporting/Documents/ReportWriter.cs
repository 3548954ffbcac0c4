using System.Globalization;
using System.Reflection;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Writes the report of a study as one HTML file that needs neither network nor scripts.</summary>
public static class ReportWriter
{
    /// <summary>The report of the whole study.</summary>
    public static string Study(StudyReport report)
    {
        var html = Begin(report.Name, report.Protocol.Question);
        var sections = SectionsOf(report);
        html.Markup("<section class=\"caution\" aria-label=\"Before you read\">")
            .Element("p", "Each player is compared with that player's own baseline, which is no norm. SwingStudy is not a medical device and gives no diagnosis.")
            .Markup("</section>");
        PageSection.Contents(html, sections);
        foreach (var section in sections)
            section.WriteTo(html, report);
        return End(html);
    }

    /// <summary>The report for a blind analyst.</summary>
    /// <param name="report">Its tables masked: codes in place of phases, contrasts and cues.</param>
    public static string Blind(StudyReport report) => BlindPage.Write(report);

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

    /// <summary>The sections in the order in which readers need them: the answer, who took part, how large, for whom; then what it rests on; then how it was made.</summary>
    private static List<PageSection> SectionsOf(StudyReport report)
    {
        var planned = report.Tables.Findings.Where(finding => finding.IsPlanned).ToList();
        List<(bool IsPart, PageSection Section)> sections =
        [
            (true, new("answer", "The answer", AnswerSection.Write)),
            (true, new("participants", "Who took part, and what was left out", ParticipantsSection.Write)),
            (true, new("changes", "How large the changes are", ChangesSection.Write)),
            (true, new("together", "The players together", GroupSection.Write)),
            (planned.Exists(finding => OtherOutcomesSection.Shows(report, finding)), new("others", "Secondary and mechanism outcomes", OtherOutcomesSection.Planned)),
            (planned.Count > 0, new("findings", "Primary outcomes: each player with reasons", FindingSection.Write)),
            (planned.Count < report.Tables.Findings.Count, new("exploratory", "Not planned before data", OtherOutcomesSection.Exploratory)),
            (true, new("players", "Sessions and movement, player by player", PlayersSection.Write)),
            (true, new("deviations", "Deviations from the plan", DeviationsSection.Write)),
            (true, new("cautions", "Cautions and safety", (html, shown) => SafetySection.Write(html, shown, null))),
            (true, new("limits", "Limits", LimitsSection.Write)),
            (report.Tables.Reliability.Count > 0, new("reliability", "Noise and reliability", ReliabilitySection.Write)),
            (true, new("accounting", "Accounting: nothing is lost without a reason", AccountingSection.Write)),
            (true, new("methods", "Methods", MethodsSection.Write)),
            (report.Tables.Effects.Count > 0, new("numbers", "All estimates", EffectsSection.Write)),
            (true, new("provenance", "Provenance", ProvenanceSection.Write)),
        ];
        return [.. sections.Where(entry => entry.IsPart).Select(entry => entry.Section)];
    }

    private static string Style()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css")
            ?? throw new InvalidOperationException("The program holds no report.css.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
