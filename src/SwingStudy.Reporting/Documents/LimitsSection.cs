using SwingStudy.Domain.Findings;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>What the study cannot say: limits that hold for every such study, and those of this one.</summary>
internal static class LimitsSection
{
    private static readonly string[] OfTheDesign = ["not-randomized", "not-blinded", "not-locked"];

    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.List(
        [
            .. report.Tables.Findings.SelectMany(finding => finding.Reasons).Where(reason => OfTheDesign.Contains(reason.Code)).Select(reason => Sentence.Of(reason.Text)).Distinct().Order(StringComparer.Ordinal),
            .. report.Tables.Findings.SelectMany(finding => finding.Of(ReasonKind.Standard)).Select(reason => Sentence.Of(reason.Text)).Distinct().Order(StringComparer.Ordinal),
            "A verdict is about the mean of a phase in these conditions. It says nothing of single swings, other clubs, or play on a course where no transfer phase tested them.",
            "Verdicts trust that session effects are independent and alike in all phases. A slow trend that the baseline is too short to show can pass for an effect; only a drawn or staggered start guards against it.",
            "How often verdicts err is simulated with the program's own stages: see scripts/false-claims in the repository of SwingStudy.",
        ]);
    }
}
