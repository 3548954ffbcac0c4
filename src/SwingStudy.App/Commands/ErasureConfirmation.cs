using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Pipeline.Erasing;

namespace SwingStudy.App.Commands;

/// <summary>Shows what an erasure would remove and lets a person at the terminal confirm it by the alias of the one who goes: a pseudonym is easily mistyped.</summary>
internal static class ErasureConfirmation
{
    private const int FilesShown = 12;

    /// <summary>Asks.</summary>
    /// <returns>Null when the erasure may go on, or nobody of that pseudonym is there to be asked about; else the result of the command.</returns>
    public static CommandResult? Ask(CommandContext context, OpenedStudy study, PersonErasure erasure, ParticipantId participant)
    {
        if (study.Registry.Participant(participant) is null)
            return null;
        if (!erasure.Forecast(participant).Succeeded(out var forecast, out var problems))
            return CommandResult.Failed(ExitCode.Refused, problems);
        if (!context.CanAsk)
            return Unconfirmed(ExitCode.WrongUsage, forecast, Missing(participant));
        Write(context.Messages, participant, forecast);
        var hasAlias = study.Identities.AliasCount(participant) > 0;
        var typed = context.Messages.Prompt(new TextPrompt<string>(hasAlias ? "Type an alias of this person to erase, anything else to stop:" : "Type the pseudonym again to erase, anything else to stop:").AllowEmpty());
        var isRight = hasAlias ? study.Identities.Resolve(typed) == participant : string.Equals(typed.Trim(), participant.ToString(), StringComparison.OrdinalIgnoreCase);
        return isRight ? null : Unconfirmed(ExitCode.Refused, forecast, Mistyped(participant, hasAlias));
    }

    private static CommandResult Unconfirmed(ExitCode exit, ErasureForecast forecast, Problem problem) => new(
        exit,
        new
        {
            would_erase = new
            {
                rows = forecast.Rows, originals_alone = forecast.OriginalsAlone, originals_shared = forecast.OriginalsShared, originals_never_taken = forecast.OriginalsNaming,
                releases = forecast.Releases, files = forecast.Files,
            },
            problems = new[] { ProblemDocument.From(problem) },
        },
        console =>
        {
            if (exit == ExitCode.WrongUsage)
                Write(console, null, forecast);
            ProblemLines.Write(console, [problem]);
        });

    private static void Write(IAnsiConsole console, ParticipantId? participant, ErasureForecast forecast)
    {
        console.WriteLine(participant is { } code ? $"Erasing {code} removes for good:" : "An erasure would remove for good:");
        Listing.WriteFacts(
            console,
            ("rows", forecast.Rows.Count == 0 ? "none" : string.Join(", ", forecast.Rows.OrderBy(table => table.Key, StringComparer.Ordinal).Select(table => string.Create(CultureInfo.InvariantCulture, $"{table.Key} {table.Value}")))),
            ("originals", string.Create(CultureInfo.InvariantCulture, $"{forecast.OriginalsAlone} as a whole, {forecast.OriginalsShared} cut, with the rows of others in place; {forecast.OriginalsNaming} that were never taken in")),
            ("history", "all earlier versions of all tables"),
            ("releases", forecast.Releases.Count == 0 ? null : $"no longer reproducible: {string.Join(", ", forecast.Releases)}"),
            ("files", forecast.Files.Count == 0 ? null : string.Join(", ", forecast.Files.Take(FilesShown)) + (forecast.Files.Count > FilesShown ? string.Create(CultureInfo.InvariantCulture, $" and {forecast.Files.Count - FilesShown} more") : "")));
        console.WriteLine("Nothing of it can be brought back. Backups and copies outside this folder are not reached.");
    }

    private static Problem Missing(ParticipantId participant) => new(
        "erasure-not-confirmed", new Place(participant.ToString()), "no --yes, and no terminal at which somebody could be asked", "a confirmation", "Look at what would go; add --yes to erase it.");

    private static Problem Mistyped(ParticipantId participant, bool hasAlias) => new(
        "erasure-not-confirmed", new Place(participant.ToString()), hasAlias ? "another text than an alias of this person" : "another text than this pseudonym", "a confirmation",
        "Nothing was erased. Check who is meant with 'swingstudy people list', then run the command again.");
}
