using System.Globalization;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Verdicts on the players of one comparison, counted. Players in whom the outcome was not measured are counted apart.</summary>
internal static class VerdictCounts
{
    /// <summary>"4 supported, 1 suggestive, 3 not shown" or "of 5 players in whom it was measured 3 supported, 2 not shown".</summary>
    public static string Of(StudyReport report, IEnumerable<FindingRow> findings)
    {
        var all = findings.ToList();
        var measured = all.FindAll(finding => Comparisons.IsMeasured(report, finding.Participant, finding.Outcome));
        if (measured.Count == 0)
            return "measured in no player";
        var counts = Verdict.All.Select(verdict => (verdict, Count: measured.Count(finding => finding.Verdict == verdict))).Where(pair => pair.Count > 0);
        var who = string.Create(CultureInfo.InvariantCulture, $"of {measured.Count} {(measured.Count == 1 ? "player" : "players")}{(measured.Count < all.Count ? " in whom it was measured" : "")}");
        return $"{who} {string.Join(", ", counts.Select(pair => string.Create(CultureInfo.InvariantCulture, $"{pair.Count} {pair.verdict}")))}";
    }
}
