using System.CommandLine;
using System.Text.Json;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;

namespace SwingStudy.App.Commands;

/// <summary><c>session resume</c>: lets a stopped session, and with it its player, go on.</summary>
internal static class SessionResumeCommand
{
    public static Command Create(CommandRunner runner)
    {
        var id = new Argument<string>("session") { Description = "The stopped session." };
        var reason = new Option<string>("--reason") { Description = "Why it may go on, and on whose word; no name of a player.", Required = true };
        var command = new Command("resume", "Let a stopped session go on. After pain that is sharp or lasts, a licensed practitioner decides first.") { id, reason };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (SessionResult.Find(study, parsed.GetValue(id)!, out var failure) is not { } session)
                return failure!;
            var why = parsed.GetValue(reason)!;
            if (string.IsNullOrWhiteSpace(why))
                return CommandResult.Failed(ExitCode.WrongUsage, "reason-missing", "--reason", "an empty reason", "a reason in words", "Say why, for whoever audits the study later.");
            if (SafetyRecords.Open(study).All(stop => stop.Session != session.Id))
                return CommandResult.Failed(ExitCode.InvalidInput, "session-not-stopped", session.Id, "a session that is not stopped", "a stopped session", "'swingstudy status' shows what is stopped.");
            var ended = 0;
            study.Registry.Act(context.Actor, "session.resume", act =>
            {
                ended = act.Resume(session.Id, why, context.Actor, PeopleEntry.Now(context.Time));
                return JsonSerializer.Serialize(new { session = session.Id, reason = why, stops = ended });
            });
            return SessionResult.Of(session, SafetyRecords.Open(study), $"{session.Id} goes on: {why}");
        });
        return command;
    }
}
