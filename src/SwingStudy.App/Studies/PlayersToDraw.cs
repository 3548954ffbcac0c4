using System.Globalization;
using System.Text.Json;
using NodaTime;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Draws;

namespace SwingStudy.App.Studies;

/// <summary>For whom a draw is due, what forbids it, and the draw itself.</summary>
internal static class PlayersToDraw
{
    /// <summary>The players of the next draw.</summary>
    /// <param name="study">The study, its protocol locked.</param>
    /// <param name="plan">What is drawn.</param>
    /// <param name="only">Players that were named; everybody when empty.</param>
    /// <param name="again">Whether players who were drawn under an earlier version shall be drawn again.</param>
    /// <param name="now">The moment: sessions that begin later are no data.</param>
    /// <returns>Their codes; or what forbids the draw, for one of the rules of <see cref="Refused"/>.</returns>
    public static Outcome<IReadOnlyList<string>> Of(OpenedStudy study, DrawPlan plan, IReadOnlyList<string> only, bool again, Instant now)
    {
        var enrolled = study.Registry.Participants().Where(person => person.Status == "enrolled").Select(person => person.Code.ToString())
            .Where(code => only.Count == 0 || only.Contains(code)).ToList();
        if (only.Except(enrolled).FirstOrDefault() is { } unknown)
            return ParticipantId.IsValid(unknown) ? ParticipantCodes.Unknown(new ParticipantId(unknown)) : new Problem("participant-code", new Place("--player"), $"'{unknown}'", "a pseudonym such as P01", "'swingstudy people list' shows them.");
        if (enrolled.Count == 0)
            return new Problem("players-missing", new Place("people"), "nobody is enrolled", "the players who take part", "'swingstudy people add P01 --alias NAME' adds one.");
        var schedule = study.Setup.Schedule;
        var version = study.Setup.History.Current!.Number;
        List<string> due = [.. enrolled.Where(code => schedule.DrawOf(code) is not { } draw || (again && draw.ProtocolVersion < version))];
        if (plan.IsJoint && due.Count > 0)
            due = enrolled;
        if (due.Count == 0 || (plan.IsJoint && !again && due.Any(code => schedule.DrawOf(code) is not null)))
            return Drawn(again, schedule.Draws[^1]);
        if (plan.IsJoint && due.Count != plan.Windows.Count)
        {
            return new Problem("players-unequal", new Place("people"), FormattableString.Invariant($"{due.Count} players are enrolled"),
                FormattableString.Invariant($"{plan.Windows.Count}, as the protocol plans: they are drawn together"), "Enrol the planned players first, or amend 'players' of the protocol.");
        }

        return WithData(study, due, now) is { Count: > 0 } late ? DataExist(late, due.Except(late).ToList(), plan.IsJoint) : Outcome<IReadOnlyList<string>>.Of(due);
    }

    /// <summary>Draws for these players and puts it on record.</summary>
    public static Draw Store(OpenedStudy study, DrawPlan plan, IReadOnlyList<string> players, CommandContext context)
    {
        var record = new DrawRecord(study.Setup.Schedule.Draws.Count + 1, study.Setup.History.Current!.Number, Instant.FromDateTimeOffset(context.Time.GetUtcNow()), context.Actor);
        var draw = RandomDraw.Make(study.Setup.Protocol, plan, players, record);
        study.Registry.Act(context.Actor, "protocol.schedule", act =>
        {
            act.Add(draw);
            return JsonSerializer.Serialize(new
            {
                draw = draw.Number, protocol_version = draw.ProtocolVersion, kind = draw.Kind, seed = draw.Seed.ToString(CultureInfo.InvariantCulture), assignments = draw.Assignments,
                players, drawn_sha256 = Sha256.Of(JsonSerializer.Serialize(draw.Players)).ToString(),
            });
        });
        study.ReadPlan();
        return draw;
    }

    /// <summary>Codes of the problems that are refusals by a rule.</summary>
    public static IReadOnlyList<string> Refused { get; } = ["already-drawn", "redraw-needs-amendment", "data-exist", "players-unequal"];

    private static Problem Drawn(bool again, Draw draw) => again
        ? new("redraw-needs-amendment", new Place("protocol schedule"), FormattableString.Invariant($"everybody was drawn on {draw.At:uuuu-MM-dd} under the version that still holds"), "an amendment since",
            "'swingstudy protocol amend --reason TEXT --known TEXT' says why the first draw shall not hold; then draw again.")
        : new("already-drawn", new Place("protocol schedule"), FormattableString.Invariant($"draw {draw.Number} of {draw.At:uuuu-MM-dd} stands"), "players for whom nothing was drawn",
            "'swingstudy protocol schedule --show' shows it. A new draw needs an amendment, then 'swingstudy protocol schedule --redraw'.");

    private static Problem DataExist(List<string> late, List<string> free, bool isJoint) => new(
        "data-exist",
        new Place("protocol schedule"),
        $"{string.Join(", ", late)} {(late.Count == 1 ? "has" : "have")} data of phases that the draw would decide about",
        "a draw before data: afterwards it decides nothing",
        isJoint || free.Count == 0
            ? "The study stays 'not randomized' for them; randomize in a study of their own."
            : $"Draw for the others: 'swingstudy protocol schedule {string.Join(' ', free.Select(code => "--player " + code))}'.");

    /// <summary>Players with a session that has begun, a swing, or a capture that is no swing's yet, in a phase of the draw or in none.</summary>
    private static List<string> WithData(OpenedStudy study, List<string> players, Instant now)
    {
        var free = study.Setup.Protocol.Phases.Where(phase => phase.Role is PhaseRole.FollowUp or PhaseRole.Transfer).Select(phase => phase.Name).ToHashSet(StringComparer.Ordinal);
        var found = study.Registry.Sessions().Where(session => session.StartedAt <= now && !free.Contains(session.Phase ?? "")).Select(session => session.Participant.ToString())
            .ToHashSet(StringComparer.Ordinal);
        var swings = study.Tables.Table(StudyTables.Swings(study.Setup.Dictionary));
        var later = new HashSet<string>(StringComparer.Ordinal);
        foreach (var rows in swings.CurrentVersion < 0 ? [] : swings.Read(columns: ["swing_id", "participant", "phase"]))
        {
            var (ids, participants, phases) = (rows.Texts("swing_id"), rows.Texts("participant"), rows.Texts("phase"));
            for (var row = 0; row < rows.Count; row++)
            {
                if (free.Contains(phases[row] ?? ""))
                    later.Add(ids[row]!);
                else
                    found.Add(participants[row] ?? "");
            }
        }

        return [.. players.Where(player => found.Contains(player) || HasOtherCaptures(study, player, later))];
    }

    /// <summary>Whether something was recorded of a player beyond swings of phases about which nothing is drawn: what was taken in without a session could be
    /// given one after the draw.</summary>
    private static bool HasOtherCaptures(OpenedStudy study, string player, HashSet<string> later)
    {
        if (study.Tables.Existing("captures") is not { } captures)
            return false;
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var rows in study.Tables.Existing("links")?.Read(columns: ["capture_id", "swing_id"], partition: player) ?? [])
        {
            var (ids, swings) = (rows.Texts("capture_id"), rows.Texts("swing_id"));
            known.UnionWith(Enumerable.Range(0, rows.Count).Where(row => swings[row] is { } swing && later.Contains(swing)).Select(row => ids[row]!));
        }

        return captures.Read(columns: ["capture_id"], partition: player).Any(rows => rows.Texts("capture_id").Any(id => !known.Contains(id!)));
    }
}
