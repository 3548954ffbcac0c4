using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse.Group;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Findings as rows of their table.</summary>
internal static class FindingRows
{
    /// <summary>Adds the finding of a player.</summary>
    public static void Add(RowSetBuilder rows, PlayerChange player, Verdict verdict, IEnumerable<Reason> reasons, double confidence) => rows.Add(
        ("scope", "player"),
        ("participant", player.Participant),
        ("outcome", player.Outcome.Name),
        ("contrast", player.Contrast.Name),
        ("basis", Word.Of(player.Basis)),
        ("verdict", VerdictWords.Of(verdict)),
        ("statement", PlayerStatement.Of(player, verdict, confidence)),
        ("reasons", Lines(reasons)));

    /// <summary>Adds the finding of the study, with the tests of players that were drawn together.</summary>
    public static void Add(RowSetBuilder rows, StudyFinding finding, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> players, IReadOnlyList<GroupEffect> draws) => rows.Add(
        ("scope", "study"),
        ("outcome", players[0].Change.Outcome.Name),
        ("contrast", players[0].Change.Contrast.Name),
        ("basis", Word.Of(players[0].Change.Basis)),
        ("verdict", VerdictWords.Of(finding.Verdict)),
        ("statement", finding.Statement),
        ("reasons", Lines([.. draws.Select(Drawn), .. players.Select(player => new Reason(player.Change.Participant, player.Change.IsMeasured ? VerdictWords.Of(player.Verdict) : "not measured"))])));

    /// <summary>What moved with an outcome; nothing for mechanism outcomes themselves and where nothing is known of the outcome.</summary>
    public static IEnumerable<Reason> Mechanism(PlayerChange player, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> moved) =>
        player.Outcome.IsMechanism || player.Estimate is null ? [] : Findings.Mechanism.Of(moved);

    private static Reason Drawn(GroupEffect test) => new(ReasonCode.Randomization, test.Estimate is { Undefined: null, P: { } p }
        ? $"{Evidence.P(p)} over the players drawn together, {test.Estimate.Method[(test.Estimate.Method.IndexOf(';', StringComparison.Ordinal) + 2)..]}"
        : test.Estimate.Undefined ?? "the test gives no p");

    /// <summary>One reason a line; missing when there is none, since an empty text is not told from a missing one by every reader.</summary>
    private static string? Lines(IEnumerable<Reason> reasons) => string.Join('\n', reasons) is { Length: > 0 } text ? text : null;
}
