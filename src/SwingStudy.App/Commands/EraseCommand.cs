using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Pipeline.Erasing;

namespace SwingStudy.App.Commands;

/// <summary><c>people erase</c>: removes a person from the study for good.</summary>
internal static class EraseCommand
{
    public static Command Create(CommandRunner runner)
    {
        var code = new Argument<string>("code") { Description = "Pseudonym, such as P01." };
        var yes = new Option<bool>("--yes") { Description = "Erase without asking. Without it, what would go is shown, and on a terminal the person's alias has to be typed." };
        var passphrase = Passphrase.File();
        var command = new Command("erase",
            "Remove a person for good: names, rows, originals, old versions, reports, logs. History of the tables begins anew, results of the others are computed again. "
            + "Cannot be undone, and does not reach backups or copies outside the study folder.") { code, yes, passphrase };
        runner.BindErasing(command, (parsed, context, study) =>
        {
            if (!ParticipantCodes.Read(parsed.GetValue(code)!).Succeeded(out var participant, out var problems))
                return CommandResult.Failed(ExitCode.WrongUsage, problems);
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var erasure = new PersonErasure(study.Setup, study.Registry, study.Identities, context.Time);
            if (!parsed.GetValue(yes) && !erasure.IsBegun(participant) && ErasureConfirmation.Ask(context, study, erasure, participant) is { } not)
                return not;
            return Result(erasure.Run(participant, context.Actor, () =>
            {
                study.ReadPlan();
                return RunCommand.Run(context, study, null, null).Problems;
            }));
        });
        return command;
    }

    private static CommandResult Result(Outcome<ErasureReport> erased)
    {
        if (!erased.Succeeded(out var report, out var problems))
            return CommandResult.Failed(ExitOf(problems[0]), problems);

        return new CommandResult(
            report.Remaining.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
            new
            {
                erasure = report.Id, originals_cut = report.Cut.Select(cut => new { original = cut.Original.ToString(), stored = cut.Stored.ToString() }),
                originals_gone = report.Gone.Select(hash => hash.ToString()), originals_gone_with_others = report.GoneWithOthers.Select(hash => hash.ToString()),
                history_begins = report.Tables, releases_no_longer_reproducible = report.Releases, files = report.Files, remaining = report.Remaining,
            },
            console => Write(console, report));
    }

    private static ExitCode ExitOf(Problem problem) => problem.Code switch
    {
        "participant-unknown" => ExitCode.InvalidInput,
        "vault-locked" or "erasure-unfinished" => ExitCode.Refused,
        _ => ExitCode.Fault,
    };

    private static void Write(IAnsiConsole console, ErasureReport report)
    {
        if (report.Id.Length == 0)
        {
            console.WriteLine("That person was erased before; nothing is left.");
            return;
        }

        console.MarkupLineInterpolated($"Erased ({report.Id}).");
        console.MarkupLineInterpolated($"Originals: {report.Gone.Count} gone, {report.Cut.Count} cut with the rows of others in place, {report.GoneWithOthers.Count} gone although others came from them.");
        console.MarkupLineInterpolated($"Tables: history begins anew with {string.Join(", ", report.Tables.Select(table => string.Create(CultureInfo.InvariantCulture, $"{table.Key}@{table.Value}")))}.");
        if (report.Releases.Count > 0)
            console.MarkupLineInterpolated($"No longer reproducible: release {string.Join(", ", report.Releases)}.");
        if (report.Files.Count > 0)
            console.MarkupLineInterpolated($"Other files deleted or shortened: {report.Files.Count}. 'swingstudy report' writes reports anew.");
        foreach (var file in report.Remaining)
            console.MarkupLineInterpolated($"[bold]Still names the person, mend it by hand:[/] {file}");
        console.WriteLine("Backups and copies outside this folder are not reached: delete or erase there too.");
    }
}
