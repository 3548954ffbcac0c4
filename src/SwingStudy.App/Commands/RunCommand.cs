using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>run</c>: brings all stages up to date.</summary>
internal static class RunCommand
{
    public static Command Create(CommandRunner runner)
    {
        var stage = new Option<string?>("--stage") { Description = $"One stage alone: {string.Join(", ", Stages.All.Select(known => known.Declaration.Name))}.", HelpName = "S" };
        var only = new Option<string?>("--only") { Description = "One player alone.", HelpName = "P01" };
        var command = new Command("run", "Bring all stages up to date; what is unchanged is skipped.") { stage, only };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var ran = Run(context, study, parsed.GetValue(stage), parsed.GetValue(only));
            return ran.Succeeded(out var report) ? Result(context, report, SafetyRecords.Look(study, context)) : CommandResult.Failed(ExitCode.WrongUsage, ran.Problems);
        }, TableNames);
        return command;
    }

    /// <summary>Tables that stages read or write.</summary>
    public static IReadOnlyList<string> TableNames { get; } =
        [.. Stages.All.SelectMany(known => known.Declaration.Inputs.Select(input => input.Table).Concat(known.Declaration.Outputs)).Distinct()];

    /// <summary>Runs the stages with progress.</summary>
    public static Outcome<RunReport> Run(CommandContext context, OpenedStudy study, string? stage, string? only) =>
        ProgressDisplay.Show(context, "Running", tell => new PipelineRunner(Stages.All, context.Time, study.Tables).BringUpToDate(study.Setup, study.Registry, new RunRequest
        {
            Stage = stage,
            Participant = only,
            Actor = context.Actor,
            Progress = new Told(progress => tell(progress.Total == 0 ? 1 : (double)progress.Done / progress.Total,
                string.Create(CultureInfo.InvariantCulture, $"{progress.Stage} {progress.Done}/{progress.Total}"))),
        }));

    /// <summary>What a run did, as document and as text.</summary>
    public static CommandResult Result(CommandContext context, RunReport report, IReadOnlyList<SessionStop> stops)
    {
        foreach (var stage in report.Stages)
            context.Log.Information("Stage {Stage}: {Done} done, {Skipped} skipped, {Removed} removed", stage.Stage, stage.Done.Count, stage.Skipped, stage.Removed.Count);
        return new CommandResult(
            stops.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
            new { report.RunId, report.Stages, stopped = SafetyRecords.Documents(stops) },
            console =>
            {
                Listing.Write(console, ["stage", "done", "up to date", "taken out", "tables"], report.Stages.Select(stage => (IReadOnlyList<string>)
                [
                    stage.Stage, Text(stage.Done.Count), Text(stage.Skipped), Text(stage.Removed.Count),
                    string.Join(", ", stage.Versions.Select(table => $"{table.Key}@{Text(table.Value)}")),
                ]), "There are no stages.");
                SafetyRecords.Write(console, stops);
            });
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Passes progress on at once, on the thread that tells it.</summary>
    private sealed class Told(Action<RunProgress> tell) : IProgress<RunProgress>
    {
        private readonly Lock _oneAtATime = new();

        public void Report(RunProgress value)
        {
            lock (_oneAtATime)
                tell(value);
        }
    }
}
