using System.CommandLine;
using System.Text.Json;
using NodaTime;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>session incident</c>: an adverse event, how it went on, or that there was none.</summary>
internal static class SessionIncidentCommand
{
    private const string Severe = "severe";

    public static Command Create(CommandRunner runner)
    {
        var id = new Argument<string>("session") { Description = "The session, such as P01-20260907-1." };
        var none = new Option<bool>("--none") { Description = "Somebody asked, and there was none." };
        var of = new Option<long?>("--follow-up-of") { Description = "Number of the event that this tells more of." };
        var when = new Option<string?>("--when") { Description = "Local time (default: the session's start).", HelpName = "\"YYYY-MM-DD HH:MM\"" };
        (string Name, Option<string?> Option)[] fields =
        [
            ("what", Text("--what", "What happened, in plain words; no name and no diagnosis.")),
            ("onset", Text("--onset", "How it began, such as 'sudden, on the ninth swing'.")),
            ("severity", Choice("--severity", "How bad it looks; asked of every event.", "mild", "moderate", Severe)),
            ("expected", Choice("--expected", "Whether it belongs to what was to be expected.", "yes", "no")),
            ("related", Choice("--related", "Whether the study may have caused it.", "unlikely", "possible", "probable")),
            ("action", Text("--action", "What was done.")),
            ("outcome", Text("--outcome", "How it is now.")),
            ("told", Text("--told", "Who was told: guardian, ethics committee, licensed practitioner, insurer.")),
            ("follow_up", Text("--follow-up", "What is to be done next, and when.")),
        ];
        var command = new Command("incident",
            "Record an adverse event, or that somebody asked and there was none. It is no diagnosis: local law, the ethics committee and licensed practitioners decide what follows.")
        {
            id, none, of, when,
        };
        foreach (var (_, option) in fields)
            command.Add(option);
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (SessionResult.Find(study, parsed.GetValue(id)!, out var failure) is not { } session)
                return failure!;
            var given = fields.Select(field => (field.Name, Value: parsed.GetValue(field.Option))).Where(field => !string.IsNullOrWhiteSpace(field.Value)).ToDictionary(field => field.Name, field => (object)field.Value!);
            if (Refusal(study, session, parsed.GetValue(none), parsed.GetValue(of), given) is { } refusal)
                return refusal;
            var moment = parsed.GetValue(of) is null ? session.StartedAt : PeopleEntry.Now(context.Time);
            if (parsed.GetValue(when) is { } typed && !Moments.Read(typed, "--when", study.Setup.Declaration.Zone).Succeeded(out moment, out var problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            var kind = parsed.GetValue(none) ? SessionEntry.Asked : parsed.GetValue(of) is null ? SessionEntry.Incident : SessionEntry.FollowUp;
            if (parsed.GetValue(of) is { } earlier)
                given["incident"] = earlier;
            return Store(context, study, session, kind, moment, given);
        });
        return command;
    }

    private static CommandResult Store(CommandContext context, OpenedStudy study, SessionRecord session, string kind, Instant moment, Dictionary<string, object> fields)
    {
        long number = 0;
        study.Registry.Act(context.Actor, "session.incident", act =>
        {
            number = act.Add(new SessionEntry(0, session.Id, session.Participant, kind, moment, context.Actor, JsonSerializer.Serialize(fields)));
            if (kind == SessionEntry.Incident && fields.GetValueOrDefault("severity") is Severe)
            {
                act.Add(new SessionStop(session.Id, session.Participant, FormattableString.Invariant($"incident {number}"), "a severe adverse event stops a session", (string)fields["what"],
                    PeopleEntry.Now(context.Time)));
            }

            return JsonSerializer.Serialize(new { session = session.Id, kind, entry = number });
        });
        return SessionResult.Of(session, SafetyRecords.Look(study, context), kind switch
        {
            SessionEntry.Asked => $"{session.Id}: asked, none.",
            SessionEntry.FollowUp => $"{session.Id}: event {fields["incident"]} is continued.",
            _ => FormattableString.Invariant($"{session.Id}: event {number} is recorded. Tell whom your ethics committee, insurer and local law name; 'session incident {session.Id} --follow-up-of {number}' continues it."),
        }, number);
    }

    private static CommandResult? Refusal(OpenedStudy study, SessionRecord session, bool none, long? of, Dictionary<string, object> given)
    {
        if (none && (given.Count > 0 || of is not null))
            return CommandResult.Failed(ExitCode.WrongUsage, "incident-unclear", "session incident", "--none together with an event", "one of them", "Record the event without --none.");
        if (!none && of is null && !given.ContainsKey("what"))
            return CommandResult.Failed(ExitCode.WrongUsage, "incident-empty", "session incident", "no word of what happened", "--what TEXT, or --none", "Say what happened, or that there was none.");
        if (!none && of is null && !given.ContainsKey("severity"))
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "incident-severity-missing", "--severity", "an event without its severity", "mild, moderate or severe: a severe one stops the session",
                "Add --severity as it looks at this moment; '--follow-up-of' corrects it later.");
        }

        if (of is { } number && study.Registry.Entries(session.Id).All(entry => entry.Id != number || entry.Kind != SessionEntry.Incident))
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "incident-unknown", "--follow-up-of", FormattableString.Invariant($"no event {number} in {session.Id}"), "the number of an event of that session",
                "'swingstudy session list --json' shows the events.");
        }

        return null;
    }

    private static Option<string?> Text(string name, string description) => new(name) { Description = description, HelpName = "TEXT" };

    private static Option<string?> Choice(string name, string description, params string[] words)
    {
        var option = new Option<string?>(name) { Description = description };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
