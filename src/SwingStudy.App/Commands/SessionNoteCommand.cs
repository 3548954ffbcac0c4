using System.CommandLine;
using System.Text.Json;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>session note</c>: a remark, or ratings at a moment of a session.</summary>
internal static class SessionNoteCommand
{
    public static Command Create(CommandRunner runner)
    {
        var id = new Argument<string>("session") { Description = "The session, such as P01-20260907-1." };
        var text = new Argument<string?>("text") { Description = "The remark; no name.", Arity = ArgumentArity.ZeroOrOne };
        var set = new Option<string[]>("--set") { Description = "A rating now, such as pain_nrs=2, fatigue_rating=4, dizziness=no; may be repeated.", HelpName = "NAME=VALUE" };
        var at = new Option<string?>("--at") { Description = "Local time it is about (default: now).", HelpName = "\"YYYY-MM-DD HH:MM\"" };
        var command = new Command("note", "Note a remark or ratings in a session. Ratings are held against the stop rules of the protocol at once.") { id, text, set, at };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (SessionResult.Find(study, parsed.GetValue(id)!, out var failure) is not { } session)
                return failure!;
            var assignments = parsed.GetValue(set) ?? [];
            if (string.IsNullOrWhiteSpace(parsed.GetValue(text)) && assignments.Length == 0)
                return CommandResult.Failed(ExitCode.WrongUsage, "note-empty", "session note", "neither a remark nor a rating", "one of them", "For instance: session note P01-20260907-1 --set pain_nrs=2.");
            if (!SessionVariables.Read(study.Setup.Dictionary, assignments).Succeeded(out var ratings, out var problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            var moment = PeopleEntry.Now(context.Time);
            if (parsed.GetValue(at) is { } typed && !Moments.Read(typed, "--at", study.Setup.Declaration.Zone).Succeeded(out moment, out problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            long number = 0;
            study.Registry.Act(context.Actor, "session.note", act =>
            {
                if (!string.IsNullOrWhiteSpace(parsed.GetValue(text)))
                    number = act.Add(new SessionEntry(0, session.Id, session.Participant, SessionEntry.Note, moment, context.Actor, JsonSerializer.Serialize(new { text = parsed.GetValue(text) })));
                if (assignments.Length > 0)
                    number = act.Add(new SessionEntry(0, session.Id, session.Participant, SessionEntry.Ratings, moment, context.Actor, ratings));
                return JsonSerializer.Serialize(new { session = session.Id, entry = number });
            });
            return SessionResult.Of(session, SafetyRecords.Look(study, context), $"Noted in {session.Id}.", number);
        });
        return command;
    }
}
