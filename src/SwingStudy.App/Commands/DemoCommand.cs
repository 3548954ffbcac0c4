using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Demo;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Figures;

namespace SwingStudy.App.Commands;

/// <summary><c>demo</c>: builds the demo study of an invented academy, runs all of it, and sets what it found beside what was planted.</summary>
internal static class DemoCommand
{
    public static Command Create(CommandRunner runner)
    {
        var folder = new Argument<string>("dir") { Description = "Folder of the demo study; made anew when it holds a demo study.", DefaultValueFactory = _ => "demo-study" };
        var noRun = new Option<bool>("--no-run") { Description = "Write the exports and declarations, add the players, and stop there." };
        var command = new Command("demo", "Build the demo study of an invented academy and run all of it.") { folder, noRun };
        runner.Bind(command, (parsed, context) =>
        {
            var study = new StudyFolder(Path.GetFullPath(parsed.GetValue(folder)!));
            if (Prepare(study) is { } refusal)
                return CommandResult.Failed(ExitCode.Refused, [refusal]);
            var truth = DemoStudy.Write(study);
            var opened = OpenedStudy.ToWrite(study, context.Time);
            if (!opened.Succeeded(out var demo))
                return CommandResult.Failed(ExitCode.Fault, opened.Problems);
            using (demo)
            {
                var problems = DemoPeople.Enrol(demo, context.Actor, context.Time, truth);
                if (problems.Count > 0)
                    return CommandResult.Failed(ExitCode.Fault, problems);
                ProtocolVersions.Store(demo, context, null, null);
                PlayersToDraw.Store(demo, DrawPlan.Of(demo.Setup.Protocol)!, [.. truth.Players.Select(player => player.Code)], context);
                return parsed.GetValue(noRun)
                    ? CommandResult.Done(new { folder = study.Root, files = truth.Counts.Files }, console => console.MarkupLineInterpolated($"{truth.Counts.Files} exports lie in {study.Inbox}; nothing was taken in yet."))
                    : Run(context, demo, truth);
            }
        });
        return command;
    }

    private static Problem? Prepare(StudyFolder study)
    {
        if (Directory.Exists(study.Root) && Directory.EnumerateFileSystemEntries(study.Root).Any())
        {
            if (!File.Exists(Path.Combine(study.Root, "truth.json")))
            {
                return new Problem("folder-not-empty", new Place(study.Root), "the folder holds something else than a demo study", "a new folder, an empty one, or an earlier demo",
                    "Choose another folder.");
            }

            Directory.Delete(study.Root, recursive: true);
        }

        foreach (var part in new[] { study.Sources, study.Inbox, study.Originals, study.Tables, study.Releases, study.Reports, study.Logs })
            Directory.CreateDirectory(part);
        StudyBuilder.CopyDictionary(study);
        return null;
    }

    private static CommandResult Run(CommandContext context, OpenedStudy demo, PlantedTruth truth)
    {
        context.Messages.MarkupLineInterpolated($"{DemoStudy.Academy} and its players are invented. {truth.Counts.Files} exports are taken in ...");
        var taken = ProgressDisplay.Show(context, "Taking in", tell => Intakes.Of(demo, context).Run(null, progress =>
            tell(progress.BytesTotal == 0 ? 1 : (double)progress.BytesDone / progress.BytesTotal, progress.File)));
        if (!taken.Succeeded(out var intake))
            return CommandResult.Failed(ExitCode.Fault, taken.Problems);
        var ran = RunCommand.Run(context, demo, null, null);
        if (!ran.Succeeded(out _, out var problems))
            return CommandResult.Failed(ExitCode.Fault, problems);
        var report = StudyReports.Gather(demo);
        var page = StudyReports.Write(demo, report, null);
        foreach (var player in truth.Players)
            StudyReports.Write(demo, report, player.Code);
        var comparison = PlantedComparison.Of(report, truth);
        return CommandResult.Done(
            new { folder = demo.Setup.Folder.Root, report = page, intake = Sums(intake), planted = comparison, inside = comparison.Count(row => row.Inside), outside = comparison.Count(row => !row.Inside) },
            console => Write(console, demo, intake, report, comparison, page));
    }

    private static object Sums(IntakeReport intake) => new { files = intake.Files.Count, intake.LinesRead, intake.RowsTaken, intake.RowsRejected, intake.LinesNotData, held = intake.Files.Count(file => file.Outcome == FileOutcome.Held) };

    private static void Write(IAnsiConsole console, OpenedStudy demo, IntakeReport intake, Reporting.Rows.StudyReport report, IReadOnlyList<PlantedComparison> comparison, string page)
    {
        console.MarkupLineInterpolated($"[bold]{demo.Setup.Protocol.Title}[/] (invented data)");
        console.WriteLine(demo.Setup.Protocol.Question);
        console.WriteLine();
        console.MarkupLineInterpolated($"{Counted.Of(intake.Files.Count, "file")}: {Count(intake, FileOutcome.Taken)} taken, {Count(intake, FileOutcome.Duplicate)} came twice, {Count(intake, FileOutcome.Held)} held");
        console.MarkupLineInterpolated($"{Counted.Of(intake.LinesRead, "line")} read = {intake.RowsTaken} taken + {intake.RowsRejected} rejected + {intake.LinesNotData} not data");
        console.MarkupLineInterpolated($"{Counted.Of(report.Tables.AllSwings, "swing")}: {report.Tables.IncludedSwings} count, {report.Tables.PracticeSwings} are practice");
        console.WriteLine();
        console.WriteLine("What was planted, and what was found:");
        foreach (var outcome in comparison.GroupBy(row => row.Outcome))
        {
            var display = new ValueDisplay(report.Dictionary[outcome.Key]);
            console.WriteLine();
            console.MarkupLineInterpolated($"[bold]{display.Label}[/]");
            Listing.Write(console, ["player", "from and to", "planted", "found", "95 % interval", "inside", "verdict"], outcome.Select(row => Cells(report, row, display)), "Nothing was planted.");
        }

        console.MarkupLineInterpolated($"{comparison.Count(row => row.Inside)} of {comparison.Count} planted effects lie inside their interval; with 95 % intervals about one in twenty may not.");
        console.WriteLine();
        foreach (var finding in report.Tables.Findings.Where(finding => finding.Scope == "study" && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary)))
            console.MarkupLineInterpolated($"[bold]{finding.Verdict}:[/] {finding.Statement}");
        console.WriteLine("What was found of the other outcomes stands in the report.");
        console.WriteLine();
        console.MarkupLineInterpolated($"Report: {page}");
        console.MarkupLineInterpolated($"Look on: swingstudy --study {demo.Setup.Folder.Root} status | audit verify | query \"SELECT * FROM findings\" | export --to DIR");
    }

    private static IReadOnlyList<string> Cells(Reporting.Rows.StudyReport report, PlantedComparison row, ValueDisplay display)
    {
        var decimals = row is { Low: { } low, High: { } high } ? display.DecimalsFor(display.Difference(high - low) / 2) : display.Decimals;
        return
        [
            row.Player, Comparisons.ContrastOf(report, row.Contrast), Number(row.Planted), Number(row.Found),
            row.Low is null ? "none" : $"{Number(row.Low)} to {Number(row.High)}", row.Inside ? "yes" : "NO", row.Verdict,
        ];

        string Number(double? value) => value is { } number ? ValueDisplay.Number(display.Difference(number), decimals) : "";
    }

    private static int Count(IntakeReport intake, FileOutcome outcome) => intake.Files.Count(file => file.Outcome == outcome);
}
