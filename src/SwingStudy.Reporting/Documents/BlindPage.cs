using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The report for an analyst who is blind: sizes and verdicts under codes, without direction, and all that does not tell one condition from another.</summary>
/// <remarks>Made from rows that were masked before. It names no phase, contrast or cue, quotes no statement and no note, and draws no figure in order of time.</remarks>
internal static class BlindPage
{
    /// <summary>Writes the page.</summary>
    public static string Write(StudyReport report)
    {
        var html = ReportWriter.Begin(report.Name, report.Protocol.Question);
        html.Markup("<section class=\"caution\" aria-label=\"Before you read\">")
            .Element("p", "This report is blind: comparisons are shown as codes, changes by their size without their direction, and statements are withheld. 'swingstudy protocol unblind' goes on record and gives the whole report.")
            .Markup("</section>");
        List<PageSection> sections =
        [
            new("changes", "How large the changes are, whatever their direction", Changes),
            new("together", "The players together", Together),
            new("safety", "Safety", Safety),
            new("reliability", "Noise and reliability", ReliabilitySection.Write),
            new("accounting", "Accounting: nothing is lost without a reason", AccountingSection.Write),
            new("provenance", "Provenance", ProvenanceSection.Write),
        ];
        PageSection.Contents(html, sections);
        foreach (var section in sections)
            section.WriteTo(html, report);
        return ReportWriter.End(html);
    }

    private static void Changes(Html html, StudyReport report)
    {
        VerdictMark.Meanings(html);
        var verdicts = report.Tables.Findings.ToLookup(finding => (finding.Participant, finding.Outcome, finding.Contrast), finding => finding.Verdict);
        var rows = report.Tables.Effects.Where(row => row is { Measure: "difference", Planned: true }).ToList();
        if (rows.Count == 0)
            html.Element("p", "No estimate yet.");
        foreach (var outcome in rows.GroupBy(row => row.Outcome).OrderBy(group => report.Protocol.Outcomes.ToList().FindIndex(known => known.Variable == group.Key)))
        {
            html.OpenTable(Comparisons.TitleOf(report, outcome.Key), "Player", "Comparison", "Verdict", "#Size", "#Interval of the size", "#p");
            foreach (var row in outcome.OrderBy(row => row.Contrast, StringComparer.Ordinal).ThenBy(row => row.Participant, StringComparer.Ordinal))
            {
                var numbers = EffectNumbers.Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, row.P, isChange: false);
                html.Markup("<tr>").Element("th", row.Participant, "scope=\"row\"").Element("td", row.Contrast)
                    .Markup($"<td>{(verdicts[(row.Participant, row.Outcome, row.Contrast)].FirstOrDefault() is { } verdict && Verdict.All.Contains(verdict) ? VerdictMark.Markup(verdict) : "")}</td>")
                    .Number(double.IsFinite(row.Estimate) ? numbers.Estimate : "none").Number(numbers.Interval).Number(EffectNumbers.ProbabilityText(row.P)).Markup("</tr>");
            }

            html.CloseTable();
        }
    }

    private static void Together(Html html, StudyReport report)
    {
        var rows = report.Tables.Group.Where(row => row is { Measure: GroupRow.Difference, Planned: true }).ToList();
        if (rows.Count == 0)
        {
            html.Element("p", "No estimate over players yet.");
            return;
        }

        html.OpenTable("Mean change over players, by its size", "Outcome", "Comparison", "#Size", "#Interval of the size", "#p, adjusted");
        foreach (var row in rows)
        {
            var numbers = EffectNumbers.Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, row.P, isChange: false);
            html.Markup("<tr>").Element("th", Comparisons.TitleOf(report, row.Outcome), "scope=\"row\"").Element("td", row.Contrast)
                .Number(double.IsFinite(row.Estimate) ? numbers.Estimate : "none").Number(numbers.Interval).Number(EffectNumbers.ProbabilityText(row.AdjustedP)).Markup("</tr>");
        }

        html.CloseTable();
    }

    /// <summary>Adverse events are told in every report; their texts may tell what was done, and stand in the whole report.</summary>
    private static void Safety(Html html, StudyReport report) =>
        html.Element("p", $"Adverse events: {SafetySection.Asked(report.Safety.Incidents.Count, report.Safety.Asked.Count)}")
            .Element("p", FormattableString.Invariant($"Stopped sessions: {report.Safety.Stops.Count}."));
}
