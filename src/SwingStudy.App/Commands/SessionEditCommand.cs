using System.CommandLine;
using System.Text.Json;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;

namespace SwingStudy.App.Commands;

/// <summary><c>session edit</c>: corrects a session; the earlier form is kept as a revision.</summary>
internal static class SessionEditCommand
{
    public static Command Create(CommandRunner runner)
    {
        var id = new Argument<string>("session") { Description = "The session, such as P01-20260907-1." };
        var phase = new Option<string?>("--phase") { Description = "Phase of the protocol." };
        var club = new Option<string?>("--club") { Description = "Club used throughout." };
        var ball = new Option<string?>("--ball") { Description = "Ball used throughout." };
        var surface = new Option<string?>("--surface") { Description = "Surface." };
        var cue = new Option<string?>("--cue") { Description = "What the player was told." };
        var site = new Option<string?>("--site") { Description = "Where." };
        var swings = new Option<int?>("--swings") { Description = "Swings planned." };
        var note = new Option<string?>("--note") { Description = "Remark; no name." };
        var set = new Option<string[]>("--set") { Description = "A condition or rating, such as cue_fidelity=90; may be repeated.", HelpName = "NAME=VALUE" };
        var command = new Command("edit", "Correct or complete a session. The earlier form is kept.") { id, phase, club, ball, surface, cue, site, swings, note, set };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (SessionResult.Find(study, parsed.GetValue(id)!, out var failure) is not { } session)
                return failure!;
            if (parsed.GetValue(phase) is { } wanted && study.Setup.Protocol.Phase(wanted) is null)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "phase-unknown", "--phase", $"the protocol has no phase '{wanted}'", "a phase of the protocol",
                    $"Its phases: {string.Join(", ", study.Setup.Protocol.Phases.Select(known => known.Name))}.");
            }

            if (!SessionVariables.Read(study.Setup.Dictionary, parsed.GetValue(set) ?? []).Succeeded(out var variables, out var problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            var edited = session with
            {
                Phase = parsed.GetValue(phase) ?? session.Phase,
                Club = parsed.GetValue(club) ?? session.Club,
                Ball = parsed.GetValue(ball) ?? session.Ball,
                Surface = parsed.GetValue(surface) ?? session.Surface,
                Cue = parsed.GetValue(cue) ?? session.Cue,
                Site = parsed.GetValue(site) ?? session.Site,
                PlannedSwings = parsed.GetValue(swings) ?? session.PlannedSwings,
                Note = parsed.GetValue(note) ?? session.Note,
                Variables = SessionVariables.Merge(session.Variables, variables),
            };
            var changed = edited != session;
            if (changed)
            {
                study.Registry.Act(context.Actor, "session.edit", act =>
                {
                    act.Save(edited);
                    return JsonSerializer.Serialize(new { session = edited.Id, revision = session.Revision + 1 });
                });
            }

            return SessionResult.Of(edited with { Revision = session.Revision + (changed ? 1 : 0) }, SafetyRecords.Look(study, context),
                changed ? $"Session {edited.Id} is corrected; 'swingstudy run' brings the results up to date." : $"Session {edited.Id} says so already.");
        });
        return command;
    }
}
