using System.CommandLine;
using System.Text.Json;
using NodaTime;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Link;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>decide exclude|include|match|alias|file</c>: human decisions, with a reason, into the ledger. A decision is undone by a new one.</summary>
internal static class DecideCommand
{
    public static Command Create(CommandRunner runner) => new("decide", "Human decisions, each with its reason; they are undone by a new decision, never erased.")
    {
        AboutSwing(runner, "exclude", "A swing, or one value of it, shall not count."),
        AboutSwing(runner, "include", "A swing, or one value of it, shall count whatever a rule says."),
        Match(runner),
        Alias(runner),
        File(runner),
    };

    private static Option<string> Reason() => new("--reason") { Description = "Why; stands in the ledger. No names.", Required = true };

    private static Command AboutSwing(CommandRunner runner, string kind, string description)
    {
        var swing = new Argument<string>("swing") { Description = "Identifier of the swing, such as P01-20260907-1-03." };
        var variable = new Option<string?>("--variable") { Description = "One variable alone." };
        var reason = Reason();
        var command = new Command(kind, description) { swing, variable, reason };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var named = parsed.GetValue(swing)!;
            var chosen = parsed.GetValue(variable);
            if (string.IsNullOrWhiteSpace(parsed.GetValue(reason)))
                return NoReason();
            if (!Exists(study, named, out var capture))
                return UnknownSwing(named);

            if (chosen is not null && !study.Setup.Dictionary.TryGet(chosen, out _))
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "variable-unknown", chosen, "no variable of that name", "a variable of the dictionary",
                    "'swingstudy dictionary show' lists them.");
            }

            return Store(context, study, kind, Subject(named, capture, chosen),
                parsed.GetValue(reason)!, "'swingstudy run' brings the results up to date.");
        });
        return command;
    }

    private static Command Match(CommandRunner runner)
    {
        var capture = new Argument<string>("capture") { Description = "Identifier of the capture, as 'status' shows it." };
        var swing = new Argument<string>("swing") { Description = "Identifier of the swing that it recorded, or none." };
        var reason = Reason();
        var command = new Command("match", "Which swing a record belongs to, or that it belongs to none.") { capture, swing, reason };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var (named, chosen) = (parsed.GetValue(capture)!, parsed.GetValue(swing)!);
            if (string.IsNullOrWhiteSpace(parsed.GetValue(reason)))
                return NoReason();
            if (Linked(study).FirstOrDefault(link => link.Capture == named) is not { } link)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "capture-unknown", named, "no capture of that name", "a capture of the study",
                    "'swingstudy status' lists those that wait; 'swingstudy query \"SELECT capture_id, method FROM links\"' lists all.");
            }

            if (link.Method == LinkMethods.Skeleton)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "capture-is-swing", named, $"it is the swing {link.Swing} itself", "a record of another device",
                    "'swingstudy decide exclude' takes a swing out of the analysis.");
            }

            string? with = null;
            if (chosen != "none" && !Exists(study, chosen, out with))
                return UnknownSwing(chosen);
            var subject = new Dictionary<string, string?> { ["capture"] = named, ["swing"] = chosen == "none" ? null : chosen };
            if (with is not null)
                subject["with"] = with;
            if (link.Participant is { } player)
                subject["participant"] = player;
            return Store(context, study, "match", JsonSerializer.Serialize(subject), parsed.GetValue(reason)!, "'swingstudy run' brings the results up to date.");
        });
        return command;
    }

    private static Command Alias(CommandRunner runner)
    {
        var alias = new Argument<string>("alias") { Description = "The name as it stands in the file." };
        var participant = new Option<string>("--is") { Description = "The player whom it means.", HelpName = "P01", Required = true };
        var reason = Reason();
        var command = new Command("alias", "Whom a name in an export means.") { alias, participant, reason };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (string.IsNullOrWhiteSpace(parsed.GetValue(reason)))
                return NoReason();
            if (!ParticipantCodes.Read(parsed.GetValue(participant)!).Succeeded(out var code, out var problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            if (study.Registry.Participant(code) is null)
                return CommandResult.Failed(ExitCode.InvalidInput, [ParticipantCodes.Unknown(code)]);
            var added = PeopleEntry.Add(study, context.Actor, context.Time, code, [parsed.GetValue(alias)!]);
            return added.Count > 0
                ? CommandResult.Failed(added.Any(problem => problem.Code == "person-erased") ? ExitCode.Refused : ExitCode.InvalidInput, added)
                : Store(context, study, "alias", JsonSerializer.Serialize(new { alias_hash = study.Identities.AliasHash(parsed.GetValue(alias)!), participant = code.ToString() }),
                    parsed.GetValue(reason)!, "'swingstudy ingest' tries the held files again.");
        });
        return command;
    }

    private static Command File(CommandRunner runner)
    {
        var hash = new Argument<string>("original") { Description = "Hash of a held file, or its first digits, as 'status' shows it." };
        var take = new Option<bool>("--take") { Description = "Take it: its values replace those that differ." };
        var leave = new Option<bool>("--leave") { Description = "Leave it out for good." };
        var times = new Option<string?>("--times") { Description = "Where local times of the file occur twice (summer time ends): which are meant." };
        times.AcceptOnlyFromAmong("earlier", "later");
        var reason = Reason();
        var command = new Command("file", "What shall become of a held file.") { hash, take, leave, times, reason };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (string.IsNullOrWhiteSpace(parsed.GetValue(reason)))
                return NoReason();
            if (parsed.GetValue(take) == parsed.GetValue(leave))
                return CommandResult.Failed(ExitCode.WrongUsage, "choice-missing", "decide file", "neither or both of --take and --leave", "one of them", "Name one.");
            var held = study.Registry.IntakeFiles(IntakeStatus.Held).Where(file => file.Hash.ToString().StartsWith(parsed.GetValue(hash)!, StringComparison.Ordinal)).ToList();
            if (held.Count != 1)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "file-unknown", parsed.GetValue(hash)!, held.Count == 0 ? "no held file has that hash" : $"{held.Count} held files have that hash", "one held file",
                    "'swingstudy status' shows the held files with their hashes.");
            }

            return Store(context, study, parsed.GetValue(take) ? "include" : "exclude", FileSubject(held[0].Hash.ToString(), parsed.GetValue(times)), parsed.GetValue(reason)!,
                "'swingstudy ingest' follows the decision.");
        });
        return command;
    }

    private static string FileSubject(string file, string? times) => JsonSerializer.Serialize(times is null ? new { file } : (object)new { file, times });

    /// <summary>A swing is named with a capture of it where it has one: the capture stays the same when a late file shifts the numbers of swings.</summary>
    private static string Subject(string swing, string? capture, string? variable)
    {
        var subject = new Dictionary<string, string> { ["swing"] = swing };
        if (capture is not null)
            subject["capture"] = capture;
        if (variable is not null)
            subject["variable"] = variable;
        return JsonSerializer.Serialize(subject);
    }

    private static bool Exists(OpenedStudy study, string swing, out string? capture)
    {
        capture = null;
        var swings = study.Tables.Table(StudyTables.Swings(study.Setup.Dictionary));
        if (swings.CurrentVersion < 0 || !swings.Read(columns: ["swing_id"]).Any(rows => rows.Texts("swing_id").Contains(swing)))
            return false;
        capture = Linked(study).Where(link => link.Swing == swing)
            .OrderByDescending(link => link.Method == LinkMethods.Skeleton).ThenBy(link => link.Capture, StringComparer.Ordinal).Select(link => link.Capture).FirstOrDefault();
        return true;
    }

    private static IEnumerable<LinkedCapture> Linked(OpenedStudy study)
    {
        var links = study.Tables.Table(StudyTables.Links);
        return links.CurrentVersion < 0 ? [] : links.Read(columns: ["capture_id", "swing_id", "participant", "method"]).SelectMany(rows => Enumerable.Range(0, rows.Count).Select(row =>
            new LinkedCapture(rows.Texts("capture_id")[row]!, rows.Texts("swing_id")[row], rows.Texts("participant")[row], rows.Texts("method")[row])));
    }

    private static CommandResult UnknownSwing(string swing) => CommandResult.Failed(ExitCode.InvalidInput, "swing-unknown", swing, "no swing of that name", "a swing of the study",
        "'swingstudy query \"SELECT swing_id FROM swings\"' lists them; a swing exists after 'swingstudy run'.");

    private static CommandResult NoReason() => CommandResult.Failed(ExitCode.WrongUsage, "reason-missing", "--reason", "an empty reason", "a reason in words",
        "Say why, for whoever audits the study later.");

    private static CommandResult Store(CommandContext context, OpenedStudy study, string kind, string subject, string reason, string next)
    {
        long number = 0;
        study.Registry.Act(context.Actor, "decide." + kind, act =>
        {
            number = act.Add(new Decision(0, kind, subject, reason, context.Actor, Instant.FromDateTimeOffset(context.Time.GetUtcNow())));
            return JsonSerializer.Serialize(new { decision = number, subject = JsonSerializer.Deserialize<JsonElement>(subject), reason });
        });
        return CommandResult.Done(new { decision = number, kind, reason }, console => console.MarkupLineInterpolated($"Decision {number}: {kind}. {next}"));
    }

    private sealed record LinkedCapture(string Capture, string? Swing, string? Participant, string? Method);
}
