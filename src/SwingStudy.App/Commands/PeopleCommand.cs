using System.CommandLine;
using System.Text.Json;
using NodaTime;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>people add|list|consent</c>.</summary>
internal static class PeopleCommand
{
    private const string Caution =
        "Consent is a matter of local law and of your ethics committee; for minors a guardian consents and the player assents. This program records it and does not replace it.";

    public static Command Create(CommandRunner runner) => new("people", $"The players, by pseudonym. {Caution}")
    {
        Add(runner),
        List(runner),
        RecordConsent(runner),
    };

    private static Command Add(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var aliases = new Option<string[]>("--alias") { Description = "A name or number by which exports know the player; may be repeated.", HelpName = "TEXT" };
        var name = new Option<string?>("--name") { Description = "The player's name; stands in identities.db alone." };
        var contact = new Option<string?>("--contact") { Description = "How to reach the player; stands in identities.db alone." };
        var command = new Command("add", "Add a player, or give a player one more alias.") { code, aliases, name, contact };
        runner.BindWriting(command, (parsed, context, study) => ParticipantCodes.Read(parsed.GetValue(code)!).Succeeded(out var participant, out var problems)
            ? Add(context, study, participant, parsed.GetValue(aliases) ?? [], parsed.GetValue(name), parsed.GetValue(contact))
            : CommandResult.Failed(ExitCode.WrongUsage, problems));
        return command;
    }

    private static CommandResult Add(CommandContext context, OpenedStudy study, ParticipantId participant, string[] aliases, string? name, string? contact)
    {
        var added = PeopleEntry.Add(study, context.Actor, context.Time, participant, aliases);
        if (added.Count > 0)
            return CommandResult.Failed(ExitCode.InvalidInput, added);
        if (name is not null || contact is not null)
            study.Identities.SetName(participant, name, contact);
        var held = study.Registry.IntakeFiles(IntakeStatus.Held).Count;
        return CommandResult.Done(
            new { participant = participant.ToString(), aliases = study.Identities.Aliases(participant).Count, held_files = held },
            console =>
            {
                console.MarkupLineInterpolated($"{participant.ToString()} is known by {study.Identities.Aliases(participant).Count} aliases.");
                if (held > 0)
                    console.MarkupLineInterpolated($"{held} files are held; 'swingstudy ingest' tries them again.");
            });
    }

    private static Command List(CommandRunner runner)
    {
        var command = new Command("list", "List the players. Aliases are shown on the terminal alone, never in tables or logs.");
        runner.BindReading(command, (_, _, study) =>
        {
            var people = study.Registry.Participants().Select(person => (person, aliases: study.Identities.Aliases(person.Code), consents: Standing(study, person.Code))).ToList();
            return CommandResult.Done(
                new { people = people.Select(row => new { code = row.person.Code.ToString(), row.person.Status, row.aliases, row.consents }) },
                console => Listing.Write(console, ["code", "status", "aliases", "consent"], people.Select(row => (IReadOnlyList<string>)
                    [row.person.Code.ToString(), row.person.Status, string.Join("; ", row.aliases), string.Join(", ", row.consents)]), "There are no players yet: 'swingstudy people add P01 --alias NAME'."));
        });
        return command;
    }

    private static List<string> Standing(OpenedStudy study, ParticipantId participant) =>
        [.. study.Registry.Consents(participant).GroupBy(consent => consent.Scope).Select(scope => scope.Last()).Where(consent => consent.Given).Select(consent => consent.Scope)];

    private static Command RecordConsent(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var scope = new Option<string>("--scope") { Description = "What for, such as study, reuse, video.", Required = true };
        var takenBack = new Option<bool>("--taken-back") { Description = "The consent was taken back." };
        var guardian = new Option<bool>("--by-guardian") { Description = "A guardian signed for a minor." };
        var note = new Option<string?>("--note") { Description = "Remark, such as the version of the form; no name." };
        var command = new Command("consent", $"Record a consent. {Caution}") { code, scope, takenBack, guardian, note };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (!ParticipantCodes.Read(parsed.GetValue(code)!).Succeeded(out var participant, out var problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            if (study.Registry.Participant(participant) is null)
                return CommandResult.Failed(ExitCode.InvalidInput, [ParticipantCodes.Unknown(participant)]);
            var consent = new Consent(participant, parsed.GetValue(scope)!, !parsed.GetValue(takenBack), parsed.GetValue(guardian),
                Instant.FromDateTimeOffset(context.Time.GetUtcNow()), parsed.GetValue(note));
            study.Registry.Act(context.Actor, "people.consent", act =>
            {
                act.Add(consent);
                return JsonSerializer.Serialize(new { participant = participant.ToString(), scope = consent.Scope, given = consent.Given, by_guardian = consent.ByGuardian });
            });
            return CommandResult.Done(
                new { participant = participant.ToString(), consent.Scope, consent.Given, consent.ByGuardian },
                console => console.MarkupLineInterpolated($"{participant.ToString()}: consent '{consent.Scope}' {(consent.Given ? "given" : "taken back")}."));
        });
        return command;
    }
}
