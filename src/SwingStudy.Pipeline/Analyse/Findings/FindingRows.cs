using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Findings as rows of their table.</summary>
internal static class FindingRows
{
    /// <summary>Adds the finding of a player; <paramref name="mechanism"/> holds the player's mechanism outcomes in the same contrast.</summary>
    public static void Add(
        RowSetBuilder rows, PlayerChange player, Verdict verdict, FindingSettings settings, EstimateLookup effects, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> mechanism)
    {
        IEnumerable<Reason> reasons =
        [
            .. Evidence.Of(player, verdict, settings, effects),
            .. player.Outcome.IsMechanism || player.Estimate is null ? [] : Mechanism.Of(mechanism),
            .. player.Estimate is null && player.CannotTell is null ? [] : player.Caveats.Select(caveat => caveat.AsReason),
            .. NextSteps.Of(player, verdict, settings),
        ];
        rows.Add(
            ("scope", "player"),
            ("participant", player.Participant),
            ("outcome", player.Outcome.Name),
            ("contrast", player.Contrast.Name),
            ("basis", Word.Of(player.Basis)),
            ("verdict", VerdictWords.Of(verdict)),
            ("statement", PlayerStatement.Of(player, verdict, settings.Confidence)),
            ("reasons", Lines(reasons)));
    }

    /// <summary>Adds the finding of the study.</summary>
    public static void Add(RowSetBuilder rows, StudyFinding finding, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> players) => rows.Add(
        ("scope", "study"),
        ("outcome", players[0].Change.Outcome.Name),
        ("contrast", players[0].Change.Contrast.Name),
        ("basis", Word.Of(players[0].Change.Basis)),
        ("verdict", VerdictWords.Of(finding.Verdict)),
        ("statement", finding.Statement),
        ("reasons", Lines(players.Select(player => new Reason(player.Change.Participant, VerdictWords.Of(player.Verdict))))));

    /// <summary>One reason a line; missing when there is none, since an empty text is not told from a missing one by every reader.</summary>
    private static string? Lines(IEnumerable<Reason> reasons) => string.Join('\n', reasons) is { Length: > 0 } text ? text : null;
}
