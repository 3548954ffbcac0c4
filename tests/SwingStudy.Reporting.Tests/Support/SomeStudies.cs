using NodaTime;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Tests.Support;

/// <summary>The invented study with other players, names and numbers: what the figures and pages have to hold.</summary>
internal static class SomeStudies
{
    /// <summary>A study of that many players, each with a supported or another change in both contrasts, in turn.</summary>
    /// <param name="count">Players.</param>
    /// <param name="title">Title of the outcome.</param>
    /// <param name="scale">Factor on all numbers.</param>
    /// <param name="phases">Names of the three phases; null for those of the invented study.</param>
    public static StudyReport OfPlayers(int count, string title = "Club head speed", double scale = 1, IReadOnlyList<string>? phases = null)
    {
        var report = Some.Report();
        var speed = Some.Dictionary["club_head_speed"];
        var names = phases ?? [.. Some.Protocol.Phases.Select(phase => phase.Name)];
        var protocol = Some.Protocol with
        {
            Phases = [.. Some.Protocol.Phases.Zip(names, (phase, name) => phase with { Name = name })],
            Contrasts = [new("with-cue", names[0], names[1]), new("kept", names[0], names[2])],
        };
        List<string> players = [.. Enumerable.Range(1, count).Select(player => FormattableString.Invariant($"P{player:00}"))];
        return report with
        {
            Protocol = protocol,
            Dictionary = new("test", new Version(1, 0, 0), [speed with { Title = title }, Some.Dictionary["attention_level"]], Some.Dictionary.Hash),
            Tables = report.Tables with
            {
                Swings = new Dictionary<string, IReadOnlyList<ReportedSwing>> { ["club_head_speed"] = [.. players.SelectMany((player, i) => Swings(player, i, names, scale))] },
                Effects = [.. protocol.Contrasts.SelectMany(contrast => players.Select((player, i) => Effect(player, i, contrast, scale)))],
                Findings = [.. protocol.Contrasts.SelectMany(contrast => players.Select((player, i) => Finding(player, i, contrast)))],
                Group = count < 2 ? [] : [.. protocol.Contrasts.Select(contrast => Group(contrast, count, scale))],
            },
        };
    }

    /// <summary>The invented study in which nobody but the first player has a value of the second outcome.</summary>
    public static StudyReport MeasuredInOne()
    {
        var report = OfPlayers(3);
        return report with
        {
            Tables = report.Tables with
            {
                Swings = new Dictionary<string, IReadOnlyList<ReportedSwing>>(report.Tables.Swings)
                {
                    ["attention_level"] = [.. report.Tables.Swings["club_head_speed"].Where(swing => swing.Participant == "P01").Select(swing => swing with { Value = 50 })],
                },
                Findings =
                [
                    .. report.Tables.Findings,
                    .. new[] { "P01", "P02", "P03" }.Select(player => new FindingRow(
                        "player", player, "attention_level", "with-cue", FindingRow.PlannedBasis, player == "P01" ? Verdict.NotShown : Verdict.CannotTell, $"{player}: statement on attention.", [])),
                ],
            },
        };
    }

    private static IEnumerable<ReportedSwing> Swings(string player, int place, IReadOnlyList<string> phases, double scale)
    {
        for (var session = 0; session < 10; session++)
        {
            var phase = session < 4 ? phases[0] : session < 8 ? phases[1] : phases[2];
            for (var swing = 0; swing < 6; swing++)
            {
                yield return new(FormattableString.Invariant($"{player}-{session}-{swing}"), player, FormattableString.Invariant($"{player}-{session}"), phase,
                    Instant.FromUtc(2026, 9, 1, 9, swing) + Duration.FromDays(7 * session), scale * (40 + place + (session < 4 ? 0 : 1) + (0.3 * Math.Sin((7 * session) + (3 * swing)))), swing != 2);
            }
        }
    }

    private static EffectRow Effect(string player, int place, Contrast contrast, double scale)
    {
        var (change, half) = (scale * (2 - (0.3 * place)), scale * (0.6 + (0.05 * place)));
        return new(player, "club_head_speed", contrast.Name, "difference", change, change - half, change + half, 0.02, 24, 24, 4, 4, "m/s", "honest-change", true, null);
    }

    private static FindingRow Finding(string player, int place, Contrast contrast) =>
        new("player", player, "club_head_speed", contrast.Name, FindingRow.PlannedBasis, Verdict.All[place % Verdict.All.Count], $"{player}: statement.", []);

    private static GroupRow Group(Contrast contrast, int count, double scale) => new(
        "club_head_speed", contrast.Name, GroupRow.Difference, scale, -0.2 * scale, 2.2 * scale, 0.08, 0.16, 61, -1.4 * scale, 3.4 * scale, count, "m/s", "meta-reml-knapp-hartung", true, null);
}
