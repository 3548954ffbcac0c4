using System.Globalization;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Cautions, adverse events, stops, and how much was swung.</summary>
internal static class SafetySection
{
    /// <summary>Writes what stands in the section; of one player when given.</summary>
    public static void Write(Html html, StudyReport report, string? participant)
    {
        var safety = report.Safety;
        html.List(
        [
            .. report.Protocol.Cautions,
            "A finding speaks of these players, this club and these conditions; it predicts no injury and no result on the course.",
            "Local law, the ethics committee and licensed practitioners decide; this report records.",
        ]);
        var incidents = Texts(safety.Incidents, participant);
        var asked = safety.Asked.Count(player => participant is null || player == participant);
        html.Element("h3", "Adverse events").Element("p", Asked(incidents.Count, asked)).List(incidents);
        var stops = Texts(safety.Stops, participant);
        html.Element("h3", "Stopped sessions").Element("p", stops.Count == 0
            ? report.Protocol.StopRules.Count == 0 ? "The protocol has no stop rules." : "None."
            : "A rule of the protocol stopped these sessions.").List(stops);
        Counts(html, [.. safety.Counts.Where(count => participant is null || count.Participant == participant)]);
    }

    /// <summary>How many adverse events are on record, and how often somebody asked.</summary>
    public static string Asked(int incidents, int asked)
    {
        var times = asked == 1 ? "once" : string.Create(CultureInfo.InvariantCulture, $"{asked} times");
        if (incidents == 0)
            return asked == 0 ? "None on record, and nobody recorded that they asked." : $"None, asked {times}.";
        return string.Create(CultureInfo.InvariantCulture, $"{incidents} on record, asked {times}.");
    }

    private static void Counts(Html html, List<ReportedCount> counts)
    {
        if (counts.Count == 0)
            return;
        html.OpenTable("Swings recorded, practice swings included; those meant as fast as the player can are counted apart", "Player", "#Sessions", "#Swings", "#At maximum intent");
        foreach (var count in counts)
        {
            html.Markup("<tr>").Element("th", count.Participant, "scope=\"row\"");
            foreach (var number in new[] { count.Sessions, count.Swings, count.AtMaximum })
                html.Element("td", number.ToString(CultureInfo.InvariantCulture), "class=\"number\"");
            html.Markup("</tr>");
        }

        html.CloseTable();
    }

    private static List<string> Texts(IReadOnlyList<ReportedIncident> all, string? participant) =>
        [.. all.Where(incident => participant is null || incident.Participant == participant).Select(incident => incident.Text)];
}
