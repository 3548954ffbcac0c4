using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>ingest</c>: takes exports in.</summary>
internal static class IngestCommand
{
    private static readonly TimeSpan WatchEvery = TimeSpan.FromSeconds(2);

    public static Command Create(CommandRunner runner)
    {
        var files = new Argument<string[]>("files") { Description = "Files to take in (default: all of the inbox).", Arity = ArgumentArity.ZeroOrMore };
        var watch = new Option<bool>("--watch") { Description = "Go on: take in whatever is dropped into the inbox, until Ctrl+C." };
        var run = new Option<bool>("--run") { Description = "Then bring all stages up to date, as 'run' does; with --watch after each intake." };
        var passphrase = Passphrase.File();
        var command = new Command("ingest", "Take exports in: store their bytes, then their rows, with every line accounted for.") { files, watch, run, passphrase };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var isRun = parsed.GetValue(run);
            if (isRun)
                study.Tables.ReadAhead(RunCommand.TableNames);
            if (parsed.GetValue(watch))
                return Watch(context, study, isRun);
            var named = parsed.GetValue(files) ?? [];
            var taken = ProgressDisplay.Show(context, "Taking in", tell => Intakes.Of(study, context).Run(named, progress =>
                tell(progress.BytesTotal == 0 ? 1 : (double)progress.BytesDone / progress.BytesTotal,
                    string.Create(CultureInfo.InvariantCulture, $"{progress.FilesDone}/{progress.FilesTotal} {progress.File}"))));
            return taken.Succeeded(out var report) ? Result(context, study, report, isRun) : CommandResult.Failed(ExitCode.Fault, taken.Problems);
        }, StudyIntake.TableNames);
        return command;
    }

    /// <summary>What an intake did and, if asked for, what the run after it did. What was held or refused does not keep the rest from being run.</summary>
    private static CommandResult Result(CommandContext context, OpenedStudy study, IntakeReport report, bool isRun)
    {
        var intake = Result(context, report, SafetyRecords.Look(study, context));
        if (!isRun)
            return intake;
        var ran = RunCommand.Run(context, study, null, null);
        var run = ran.Succeeded(out var stages) ? RunCommand.Result(context, stages, []) : CommandResult.Failed(ExitCode.Fault, ran.Problems);
        return new CommandResult(run.Exit == ExitCode.Fault ? run.Exit : intake.Exit, new { intake = intake.Document, run = run.Document }, console =>
        {
            intake.Render(console);
            run.Render(console);
        });
    }

    private static CommandResult Watch(CommandContext context, OpenedStudy study, bool isRun)
    {
        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, pressed) =>
        {
            pressed.Cancel = true;
            stop.Cancel();
        };
        var files = 0;
        context.Messages.MarkupLineInterpolated($"Watching {study.Setup.Folder.Inbox}; Ctrl+C ends it.");
        new IntakeWatcher(study.Setup.Folder, () => Intakes.Of(study, context).Run(), WatchEvery, context.Time).WatchAsync(taken =>
        {
            if (!taken.Succeeded(out var report))
            {
                ProblemLines.Write(context.Messages, taken.Problems);
                return;
            }

            files += report.Files.Count;
            Result(context, study, report, isRun).Render(context.Messages);
        }, stop.Token).GetAwaiter().GetResult();
        return CommandResult.Done(new { files }, console => console.MarkupLineInterpolated($"{Counted.Of(files, "file")} looked at."));
    }

    /// <summary>What an intake did, as document and as text.</summary>
    public static CommandResult Result(CommandContext context, IntakeReport report, IReadOnlyList<SessionStop> stops)
    {
        foreach (var file in report.Files)
        {
            context.Log.Information("File {Hash} of {Source}: {Outcome}, {Read} read, {Taken} taken, {Rejected} rejected, {NotData} not data",
                file.Hash?.Short, file.Source, file.Outcome, file.Counts.Read, file.Counts.Taken, file.Counts.Rejected, file.Counts.NotDataTotal);
        }

        return new CommandResult(
            report.IsForbidden ? ExitCode.Refused : report.NeedsPerson || stops.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
            new
            {
                report.LinesRead, report.RowsTaken, report.RowsRejected, report.LinesNotData,
                files = report.Files.Select(file => new
                {
                    file.File, file.Outcome, sha256 = file.Hash?.ToString(), file.Source, lines_read = file.Counts.Read, rows_taken = file.Counts.Taken,
                    rows_rejected = file.Counts.Rejected, not_data = file.Counts.NotData, file.RejectedCells, file.Revisions,
                    problems = file.Problems.Select(ProblemDocument.From), remarks = file.Remarks.Select(ProblemDocument.From),
                }),
                stopped = SafetyRecords.Documents(stops),
            },
            console =>
            {
                Write(console, report);
                SafetyRecords.Write(console, stops);
            });
    }

    private static void Write(IAnsiConsole console, IntakeReport report)
    {
        Listing.Write(console, ["file", "source", "outcome", "read", "taken", "rejected", "not data", "cells rejected"], report.Files.Select(file => (IReadOnlyList<string>)
            [file.File, file.Source ?? "", Word(file.Outcome), Text(file.Counts.Read), Text(file.Counts.Taken), Text(file.Counts.Rejected), NotData(file), Text(file.RejectedCells)]),
            "The inbox is empty.");
        if (report.Files.Any(file => file.Outcome == FileOutcome.Taken))
            console.MarkupLineInterpolated($"Lines: {report.LinesRead} read = {report.RowsTaken} taken + {report.RowsRejected} rejected + {report.LinesNotData} not data");
        if (report.Files.Any(file => file.Counts.Rejected + file.RejectedCells > 0))
            console.WriteLine("""What was rejected stands with its raw text in the table rejects: swingstudy query 'SELECT original_row, raw, reason, detail FROM rejects'""");
        foreach (var file in report.Files)
        {
            foreach (var revision in file.Revisions)
                console.MarkupLineInterpolated($"Revised: {file.File}:{revision.Row} {revision.Variable} {revision.Before ?? "missing"} -> {revision.After ?? "missing"} (replaces {revision.Replaces})");
            Problems(console, file.Problems, file.Outcome);
            Problems(console, file.Remarks, file.Outcome);
        }
    }

    private static void Problems(IAnsiConsole console, IReadOnlyList<Problem> problems, FileOutcome outcome)
    {
        if (problems.Count == 0)
            return;
        console.MarkupLineInterpolated($"[bold]{Word(outcome)}:[/]");
        ProblemLines.Write(console, problems);
    }

    private static string NotData(FileResult file) => file.Counts.NotDataTotal == 0
        ? "0"
        : $"{Text(file.Counts.NotDataTotal)} ({string.Join(", ", file.Counts.NotData.Where(kind => kind.Value > 0).Select(kind => $"{kind.Key} {Text(kind.Value)}"))})";

    private static string Word(FileOutcome outcome) => outcome switch
    {
        FileOutcome.Taken => "taken",
        FileOutcome.Held => "held",
        FileOutcome.Duplicate => "already had",
        FileOutcome.LeftOut => "left out",
        FileOutcome.Refused => "refused",
        _ => "not read",
    };

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
