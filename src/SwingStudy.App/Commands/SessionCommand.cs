using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Pipeline.Masking;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>session add|import|list</c>, and the commands beside it: occasions of players with their conditions.</summary>
internal static class SessionCommand
{
    private static readonly LocalDateTimePattern Start = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    public static Command Create(CommandRunner runner) => new("session", "The sessions: one player on one occasion in one phase.")
    {
        Add(runner),
        Import(runner),
        List(runner),
        SessionEditCommand.Create(runner),
        SessionNoteCommand.Create(runner),
        SessionIncidentCommand.Create(runner),
        SessionResumeCommand.Create(runner),
    };

    private static Command Add(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "The player's pseudonym." };
        var start = new Option<string>("--start") { Description = "Local start in the study's zone.", HelpName = "\"YYYY-MM-DD HH:MM\"", Required = true };
        var phase = new Option<string>("--phase") { Description = "Phase of the protocol.", Required = true };
        var club = new Option<string?>("--club") { Description = "Club used throughout." };
        var ball = new Option<string?>("--ball") { Description = "Ball used throughout." };
        var surface = new Option<string?>("--surface") { Description = "Surface." };
        var cue = new Option<string?>("--cue") { Description = "What the player was told." };
        var site = new Option<string?>("--site") { Description = "Where." };
        var swings = new Option<int?>("--swings") { Description = "Swings planned." };
        var note = new Option<string?>("--note") { Description = "Remark; no name." };
        var set = new Option<string[]>("--set") { Description = "A condition or rating, such as warmup_swings=10, pain_nrs=0; may be repeated.", HelpName = "NAME=VALUE" };
        var command = new Command("add", "Add a session by hand.") { code, start, phase, club, ball, surface, cue, site, swings, note, set };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (!ParticipantCodes.Known(study, parsed.GetValue(code)!).Succeeded(out var participant, out var problems))
                return CommandResult.Failed(problems[0].Code == "participant-unknown" ? ExitCode.InvalidInput : ExitCode.WrongUsage, problems);
            if (SessionRefusals.Of(study, participant) is { Count: > 0 } refusals)
                return CommandResult.Failed(ExitCode.Refused, refusals);
            if (!SessionVariables.Read(study.Setup.Dictionary, parsed.GetValue(set) ?? []).Succeeded(out var variables, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            if (!Start.Parse(parsed.GetValue(start)!).TryGetValue(default, out var local))
            {
                return CommandResult.Failed(ExitCode.WrongUsage, "start-unreadable", "--start", $"'{parsed.GetValue(start)}'", "a local date and time",
                    "For instance: --start \"2026-09-07 10:30\".");
            }

            if (study.Setup.Protocol.Phase(parsed.GetValue(phase)!) is null)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "phase-unknown", "--phase", $"the protocol has no phase '{parsed.GetValue(phase)}'",
                    "a phase of the protocol", $"Its phases: {string.Join(", ", study.Setup.Protocol.Phases.Select(known => known.Name))}.");
            }

            var ordinal = 1 + study.Registry.Sessions(participant).Count(session => session.StartedLocal.Date == local.Date && session.StartedLocal != local);
            var mapped = DateTimeZoneProviders.Tzdb[study.Setup.Declaration.Zone].MapLocal(local);
            if (mapped.Count != 1)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "local-time-unclear", "--start", $"{Start.Format(local)} occurs {mapped.Count} times in {study.Setup.Declaration.Zone}",
                    "a local time that occurs once", "The clocks change in that hour; give a start just before or after it.");
            }

            var session = new SessionRecord
            {
                Id = new SessionId(participant, local.Date.ToDateOnly(), ordinal).ToString(),
                Participant = participant,
                StartedLocal = local,
                StartedAt = mapped.Single().ToInstant(),
                Phase = parsed.GetValue(phase),
                Club = parsed.GetValue(club),
                Ball = parsed.GetValue(ball),
                Surface = parsed.GetValue(surface),
                Cue = parsed.GetValue(cue),
                Site = parsed.GetValue(site),
                PlannedSwings = parsed.GetValue(swings),
                Note = parsed.GetValue(note),
                Variables = variables,
            };
            study.Registry.Act(context.Actor, "session.add", act =>
            {
                act.Save(session);
                return JsonSerializer.Serialize(new { session = session.Id, phase = session.Phase });
            });
            return SessionResult.Of(session, SafetyRecords.Look(study, context), $"Session {session.Id}, phase {session.Phase}.");
        });
        return command;
    }

    private static Command Import(CommandRunner runner)
    {
        var files = new Argument<string[]>("files") { Description = "Session sheets, such as a coach's workbook.", Arity = ArgumentArity.OneOrMore };
        var passphrase = Passphrase.File();
        var command = new Command("import", "Take sessions from sheets, by the study's mappings with 'rows: sessions'.") { files, passphrase };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            if (study.Setup.Mappings.All(mapping => mapping.Rows != RowMeaning.Sessions))
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "no-session-mapping", study.Setup.Folder.Sources, "no mapping reads sessions", "a mapping with 'rows: sessions'",
                    "Draft one with 'swingstudy source suggest FILE', set 'rows: sessions', and save it in sources/.");
            }

            var taken = Intakes.Of(study, context).Run(parsed.GetValue(files)!);
            return taken.Succeeded(out var report) ? IngestCommand.Result(context, report, SafetyRecords.Look(study, context)) : CommandResult.Failed(ExitCode.Fault, taken.Problems);
        });
        return command;
    }

    /// <summary>The session as a blind analyst may see it: whoever runs sessions has the calendar of 'protocol schedule'.</summary>
    private static SessionRecord Blind(SessionRecord session, PhaseMask mask) => session with
    {
        Phase = mask.Code(MaskedName.Phase, session.Phase), Cue = mask.Code(MaskedName.Cue, session.Cue), Note = null, Variables = "{}",
    };

    private static Command List(CommandRunner runner)
    {
        var only = new Option<string?>("--only") { Description = "One player.", HelpName = "P01" };
        var command = new Command("list", "List the sessions.") { only };
        runner.BindReading(command, (parsed, _, study) =>
        {
            var sessions = study.Registry.Sessions().Where(session => parsed.GetValue(only) is not { } code || session.Participant.ToString() == code)
                .Select(session => study.Mask is { } mask ? Blind(session, mask) : session).ToList();
            var stopped = SafetyRecords.Open(study).Select(stop => stop.Session).ToHashSet(StringComparer.Ordinal);
            var entries = study.Registry.Entries().Where(entry => study.Mask is null || entry.Kind != SessionEntry.Note).ToLookup(entry => entry.Session, StringComparer.Ordinal);
            return CommandResult.Done(
                new
                {
                    sessions = sessions.Select(session => new
                    {
                        session.Id, participant = session.Participant.ToString(), started_at = session.StartedAt.ToString(), started_local = Start.Format(session.StartedLocal),
                        session.Phase, session.Site, session.Club, session.Ball, session.Surface, session.Cue, session.PlannedSwings, session.Note,
                        variables = JsonSerializer.Deserialize<JsonElement>(session.Variables), session.Revision,
                        original_sha256 = session.Original?.ToString(), session.OriginalRow, stopped = stopped.Contains(session.Id),
                        entries = entries[session.Id].Select(entry => new { entry.Id, entry.Kind, at = entry.At.ToString(), entry.Actor, details = JsonSerializer.Deserialize<JsonElement>(entry.Document) }),
                    }),
                },
                console => Listing.Write(console, ["session", "start", "phase", "club", "ball", "surface", "cue", "revision", "state"], sessions.Select(session => (IReadOnlyList<string>)
                    [session.Id, Start.Format(session.StartedLocal), session.Phase ?? "", session.Club ?? "", session.Ball ?? "", session.Surface ?? "", session.Cue ?? "",
                        session.Revision.ToString(CultureInfo.InvariantCulture), stopped.Contains(session.Id) ? "stopped" : ""]), "There are no sessions yet."));
        });
        return command;
    }
}
