using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Identities;

namespace SwingStudy.App.Commands;

/// <summary><c>people vault init|status|unlock|change|rotate|backup|restore</c>: names behind a passphrase.</summary>
internal static class VaultCommand
{
    private const string NewVariable = "SWINGSTUDY_NEW_PASSPHRASE";

    /// <summary>A name was given while the vault is locked.</summary>
    public static Problem NamesLocked { get; } = new("vault-locked", new Place("identities.db"), "the vault is locked", "its passphrase, so that a name can be stored encrypted",
        $"Set {Passphrase.Variable} or name a file with --passphrase-file. Aliases can be added without: their hashes alone are stored.");

    public static Command Create(CommandRunner runner) => new("vault", "Names, contacts and aliases behind a passphrase. Intake works while it is locked; it is locked whenever no command holds the passphrase.")
    {
        Act(runner, "init", "Make the vault: names in identities.db, and all originals, are encrypted from now on. Without its passphrase nobody reads either any more.", (context, study, file, _) =>
            Ask(context, file).Succeeded(out var passphrase, out var problems) ? Create(study, passphrase) : problems),
        Status(runner),
        Unlock(runner),
        Act(runner, "change", $"Give the vault another passphrase (from {NewVariable} or a prompt).", (context, study, file, _) =>
            Open(context, study, file) ?? (Passphrase.Read(context, NewVariable, null, "The new passphrase:").Succeeded(out var wanted, out var problems) ? One(study.Identities.ChangePassphrase(wanted)) : problems)),
        Act(runner, "rotate", "Take new keys for the vault and for each person, and encrypt everything anew.", (context, study, file, _) =>
            Ask(context, file).Succeeded(out var passphrase, out var problems) ? One(study.Identities.Unlock(passphrase) ?? study.Identities.RotateKeys(passphrase)) : problems),
        Act(runner, "backup", "Copy the vault, as encrypted as it is, to a new file. Keep it where the study is not.", (_, study, _, to) => One(study.Identities.Backup(Path.GetFullPath(to!))), "to"),
        Act(runner, "restore", "Bring the vault of a backup back. Whoever was erased since stays erased.", (context, study, file, from) =>
            Ask(context, file).Succeeded(out var passphrase, out var problems) ? One(study.Identities.Restore(Path.GetFullPath(from!), passphrase)) : problems, "from"),
    };

    private static Command Act(CommandRunner runner, string verb, string description, Func<CommandContext, OpenedStudy, string?, string?, IReadOnlyList<Problem>> act, string? path = null)
    {
        var passphrase = Passphrase.File();
        var file = path is null ? null : new Argument<string>(path) { Description = "The file." };
        var command = new Command(verb, description) { passphrase };
        if (file is not null)
            command.Add(file);
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var problems = act(context, study, parsed.GetValue(passphrase), file is null ? null : parsed.GetValue(file));
            if (problems.Count > 0)
                return Failed(problems);
            study.Registry.Act(context.Actor, "vault." + verb, _ => "{}");
            return State(study);
        });
        return command;
    }

    private static Command Status(CommandRunner runner)
    {
        var command = new Command("status", "Whether there is a vault.");
        runner.BindReading(command, (_, _, study) => State(study));
        return command;
    }

    private static Command Unlock(CommandRunner runner)
    {
        var passphrase = Passphrase.File();
        var command = new Command("unlock", "Show names and contacts, on the terminal alone. The vault is locked again when the command ends.") { passphrase };
        runner.BindReading(command, (parsed, context, study) =>
        {
            if (Open(context, study, parsed.GetValue(passphrase)) is { } problems)
                return Failed(problems);
            var people = study.Registry.Participants().Select(person => (Code: person.Code.ToString(), Names: study.Identities.Names(person.Code), Aliases: study.Identities.Aliases(person.Code))).ToList();
            return CommandResult.Done(
                new { people = people.Select(person => new { person.Code, person.Names.Name, person.Names.Contact, person.Aliases }) },
                console => Listing.Write(console, ["code", "name", "contact", "aliases"], people.Select(person => (IReadOnlyList<string>)
                    [person.Code, person.Names.Name ?? "", person.Names.Contact ?? "", string.Join("; ", person.Aliases)]), "There are no players yet."));
        });
        return command;
    }

    private static CommandResult State(OpenedStudy study) => CommandResult.Done(
        new { vault = study.Identities.Vault == VaultState.Off ? "off" : "on" },
        console => console.WriteLine(study.Identities.Vault == VaultState.Off
            ? "There is no vault: names stand in identities.db and in originals/ in clear, for whoever may read those files."
            : "Names, contacts, aliases and originals are encrypted. Without the passphrase nobody can read them: keep it, and a backup, where the study is not."));

    private static Outcome<string> Ask(CommandContext context, string? file) => Passphrase.Read(context, Passphrase.Variable, file, "The vault's passphrase:");

    private static IReadOnlyList<Problem>? Open(CommandContext context, OpenedStudy study, string? file)
    {
        if (!Ask(context, file).Succeeded(out var passphrase, out var problems))
            return problems;
        return study.Identities.Unlock(passphrase) is { } wrong ? [wrong] : null;
    }

    private static IReadOnlyList<Problem> Create(OpenedStudy study, string passphrase)
    {
        if (study.Identities.CreateVault(passphrase) is { } problem)
            return [problem];
        study.Originals.SealAll();
        return [];
    }

    private static IReadOnlyList<Problem> One(Problem? problem) => problem is null ? [] : [problem];

    private static CommandResult Failed(IReadOnlyList<Problem> problems) => CommandResult.Failed(problems[0].Code switch
    {
        "passphrase-missing" or "vault-passphrase-short" => ExitCode.WrongUsage,
        "file-exists" or "vault-backup-unreadable" or "vault-off" => ExitCode.InvalidInput,
        _ => ExitCode.Refused,
    }, problems);
}
