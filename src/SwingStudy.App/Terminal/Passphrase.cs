using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Identities;

namespace SwingStudy.App.Terminal;

/// <summary>The vault's passphrase: from the environment, a file or a prompt. Never from the command line, where others see it.</summary>
internal static class Passphrase
{
    /// <summary>The environment variable that may hold it.</summary>
    public const string Variable = "SWINGSTUDY_PASSPHRASE";

    /// <summary>The option that names a file with it.</summary>
    public static Option<string?> File() => new("--passphrase-file")
    {
        Description = $"File whose first line is the vault's passphrase (else the environment variable {Variable}, else a prompt).",
        HelpName = "FILE",
    };

    /// <summary>Reads a passphrase.</summary>
    /// <param name="context">The terminal.</param>
    /// <param name="variable">Environment variable.</param>
    /// <param name="file">File; null: none was named.</param>
    /// <param name="question">What a prompt asks.</param>
    /// <returns>The passphrase; or the problem <c>passphrase-missing</c>.</returns>
    public static Outcome<string> Read(CommandContext context, string variable, string? file, string question)
    {
        if (file is not null)
        {
            return System.IO.File.Exists(file) && System.IO.File.ReadLines(file).FirstOrDefault() is { Length: > 0 } line
                ? line
                : new Problem("passphrase-missing", new Place(file), "no file with a first line", "a file that holds the passphrase", "Check the path.");
        }

        if (Environment.GetEnvironmentVariable(variable) is { Length: > 0 } set)
            return set;
        return context.CanAsk
            ? context.Messages.Prompt(new TextPrompt<string>(question).Secret())
            : new Problem("passphrase-missing", new Place("identities.db"), "no passphrase", "the vault's passphrase",
                $"Set {variable}, or name a file with --passphrase-file. It is never given as an argument, where others could see it.");
    }

    /// <summary>Opens the vault where there is one and a passphrase was given without asking; a locked vault is no problem by itself.</summary>
    /// <returns>Null; or why the passphrase that was given does not open it.</returns>
    public static Problem? OpenIfGiven(OpenedStudy study, string? file)
    {
        if (study.Identities.Vault != VaultState.Locked)
            return null;
        var given = file is not null && System.IO.File.Exists(file) ? System.IO.File.ReadLines(file).FirstOrDefault() : Environment.GetEnvironmentVariable(Variable);
        return string.IsNullOrEmpty(given) ? null : study.Identities.Unlock(given);
    }
}
