using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>people add|edit|list</c>, and the commands beside it.</summary>
internal static class PeopleCommand
{
    /// <summary>What the program does not decide.</summary>
    public const string Caution =
        "Consent, minors and erasure are matters of local law and of your ethics committee. This program records what you decide and does not replace them.";

    public static Command Create(CommandRunner runner) => new("people", $"The players, by pseudonym. {Caution}")
    {
        Add(runner),
        Edit(runner),
        List(runner),
        ConsentCommand.Create(runner),
        WithdrawCommand.Create(runner),
        EraseCommand.Create(runner),
        VaultCommand.Create(runner),
    };

    private static Command Add(CommandRunner runner) => Entry(runner, "add", "Add a player, or give a player one more alias.", mustBeKnown: false);

    private static Command Edit(CommandRunner runner) => Entry(runner, "edit", "Correct or complete what is recorded of a player.", mustBeKnown: true);

    private static Command Entry(CommandRunner runner, string verb, string description, bool mustBeKnown)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var aliases = new Option<string[]>("--alias") { Description = "A name or number by which exports know the player; may be repeated.", HelpName = "TEXT" };
        var name = new Option<string?>("--name") { Description = "The player's name; stands in identities.db alone." };
        var contact = new Option<string?>("--contact") { Description = "How to reach the player; stands in identities.db alone." };
        var age = new Option<string?>("--age-band") { Description = "Band of age, such as 18-29; it tells whether a guardian has to consent. No date of birth is stored.", HelpName = "BAND" };
        var set = new Option<string[]>("--set") { Description = "Another variable of the participant level, such as handedness=left; may be repeated.", HelpName = "NAME=VALUE" };
        var passphrase = Passphrase.File();
        var command = new Command(verb, description) { code, aliases, name, contact, age, set, passphrase };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var named = mustBeKnown ? ParticipantCodes.Known(study, parsed.GetValue(code)!) : ParticipantCodes.Read(parsed.GetValue(code)!);
            if (!named.Succeeded(out var participant, out var problems))
                return CommandResult.Failed(problems[0].Code == "participant-unknown" ? ExitCode.InvalidInput : ExitCode.WrongUsage, problems);
            if (!PersonFactsEntry.Read(study.Setup.Dictionary, participant, parsed.GetValue(age), parsed.GetValue(set) ?? []).Succeeded(out var facts, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var names = new PersonNames(parsed.GetValue(name), parsed.GetValue(contact));
            return Store(context, study, facts, parsed.GetValue(aliases) ?? [], names);
        });
        return command;
    }

    private static CommandResult Store(CommandContext context, OpenedStudy study, PersonFacts facts, string[] aliases, PersonNames names)
    {
        var participant = facts.Participant;
        var known = study.Registry.Facts(participant);
        var all = new PersonFacts(participant, facts.Values.Concat(known.Values.Where(fact => !facts.Values.ContainsKey(fact.Key))).ToDictionary(StringComparer.Ordinal));
        if (EligibilityCheck.Check(all, study.Setup.Protocol.Eligibility) is { Count: > 0 } against)
            return CommandResult.Failed(ExitCode.Refused, against);
        var hasNames = names.Name is not null || names.Contact is not null;
        if (hasNames && study.Identities.Vault == VaultState.Locked)
            return CommandResult.Failed(ExitCode.Refused, [VaultCommand.NamesLocked]);
        var added = PeopleEntry.Add(study, context.Actor, context.Time, participant, aliases, facts);
        if (added.Count > 0)
            return CommandResult.Failed(added.Any(problem => problem.Code == "person-erased") ? ExitCode.Refused : ExitCode.InvalidInput, added);
        var before = study.Identities.Names(participant);
        if (hasNames && study.Identities.SetNames(participant, new PersonNames(names.Name ?? before.Name, names.Contact ?? before.Contact)) is { } locked)
            return CommandResult.Failed(ExitCode.Refused, [locked]);
        return Stored(study, all);
    }

    private static CommandResult Stored(OpenedStudy study, PersonFacts facts)
    {
        var participant = facts.Participant;
        var held = study.Registry.IntakeFiles(IntakeStatus.Held).Count;
        var aliases = study.Identities.AliasCount(participant);
        var lacking = new ConsentStanding(study.Setup.Protocol.Eligibility).Lacking(facts, study.Registry.Consents(participant), ConsentScope.Research);
        return CommandResult.Done(
            new
            {
                participant = participant.ToString(), aliases, held_files = held, facts = facts.Values,
                lacking = lacking is null ? null : ProblemDocument.From(lacking),
            },
            console =>
            {
                console.MarkupLineInterpolated($"{participant.ToString()} is known by {Counted.Of(aliases, "alias", "aliases")}.");
                if (lacking is not null)
                    ProblemLines.Write(console, [lacking]);
                else if (held > 0)
                    console.MarkupLineInterpolated($"{Counted.Of(held, "file")} {(held == 1 ? "is" : "are")} held; 'swingstudy ingest' tries {(held == 1 ? "it" : "them")} again.");
            });
    }

    private static Command List(CommandRunner runner)
    {
        var command = new Command("list", "List the players. Aliases are shown on the terminal alone, never in tables or logs.");
        runner.BindReading(command, (_, _, study) =>
        {
            if (Passphrase.OpenIfGiven(study, null) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var standing = new ConsentStanding(study.Setup.Protocol.Eligibility);
            var people = study.Registry.Participants().Select(person => Row(study, standing, person)).ToList();
            return CommandResult.Done(
                new { vault = study.Identities.Vault, people, erased = study.Registry.Erasures().Count },
                console => Listing.Write(console, ["code", "status", "aliases", "facts", "consent in force"], people.Select(row => (IReadOnlyList<string>)
                    [row.Code, row.Status, AliasText(row), string.Join(", ", row.Facts.Values), string.Join(", ", row.Consents)]), "There are no players yet: 'swingstudy people add P01 --alias NAME'."));
        });
        return command;
    }

    private static PersonRow Row(OpenedStudy study, ConsentStanding standing, Participant person)
    {
        var facts = study.Registry.Facts(person.Code);
        return new PersonRow(person.Code.ToString(), person.Status, study.Identities.Aliases(person.Code), study.Identities.AliasCount(person.Code), facts.Values,
            [.. standing.InForce(facts, study.Registry.Consents(person.Code)).Select(Word.Of)]);
    }

    private static string AliasText(PersonRow row) => row.Aliases.Count == row.AliasCount
        ? string.Join("; ", row.Aliases)
        : string.Create(CultureInfo.InvariantCulture, $"{row.AliasCount} in the vault");

    private sealed record PersonRow(string Code, string Status, IReadOnlyList<string> Aliases, int AliasCount, IReadOnlyDictionary<string, string> Facts, IReadOnlyList<string> Consents);
}
