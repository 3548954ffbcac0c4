using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Outcomes and contrasts as pages name and order them.</summary>
public static class Comparisons
{
    /// <summary>Title of an outcome.</summary>
    public static string TitleOf(StudyReport report, string? outcome) =>
        outcome is not null && report.Dictionary.TryGet(outcome, out var variable) ? variable.Title : outcome ?? "Study";

    /// <summary>"baseline to cue".</summary>
    public static string ContrastOf(StudyReport report, string? contrast) =>
        report.Protocol.Contrasts.FirstOrDefault(candidate => candidate.Name == contrast) is { } found
            ? $"{found.From.Replace('-', ' ')} to {found.To.Replace('-', ' ')}"
            : contrast?.Replace('-', ' ') ?? "all phases";

    /// <summary>Both.</summary>
    public static string Of(StudyReport report, string? outcome, string? contrast) => $"{TitleOf(report, outcome)}, {ContrastOf(report, contrast)}";

    /// <summary>Place in the protocol: outcome by outcome, contrast by contrast.</summary>
    public static int OrderOf(StudyReport report, string? outcome, string? contrast)
    {
        var first = report.Protocol.Outcomes.ToList().FindIndex(candidate => candidate.Variable == outcome);
        var second = report.Protocol.Contrasts.ToList().FindIndex(candidate => candidate.Name == contrast);
        return ((first < 0 ? 999 : first) * 1000) + (second < 0 ? 999 : second);
    }

    /// <summary>Whether the player has any value of the outcome: without one there was no device for it, and the player is not judged. Outcomes that are no numbers count as measured.</summary>
    public static bool IsMeasured(StudyReport report, string? participant, string? outcome) =>
        participant is null || outcome is null || report.Tables.Swings.GetValueOrDefault(outcome) is not { } swings || swings.Any(swing => swing.Participant == participant);

    /// <summary>A title in the middle of a sentence; abbreviations stay.</summary>
    public static string Lower(string title) => title.Length > 1 && !char.IsUpper(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    /// <summary>Whether the protocol has the outcome in that role.</summary>
    public static bool Is(StudyReport report, string? outcome, OutcomeRole role) => report.Protocol.Outcomes.Any(candidate => candidate.Variable == outcome && candidate.Role == role);
}
