using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>Brings the tables of a study up to date with its captures, registry and declarations.</summary>
/// <remarks>The caller holds the study's writer lock.</remarks>
/// <param name="stages">Stages in an order in which each comes after those whose tables it reads; <see cref="Stages.All"/> for a study.</param>
/// <param name="time">The clock for logs and records; nothing in a table depends on it.</param>
/// <param name="tables">The study's tables where they are at hand, so that no log is read twice.</param>
public sealed class PipelineRunner(IReadOnlyList<Stage> stages, TimeProvider? time = null, TableStore? tables = null)
{
    private readonly TimeProvider _time = time ?? TimeProvider.System;

    /// <summary>Brings all stages up to date, or what <paramref name="request"/> names.</summary>
    /// <returns>What was done; or the problem <c>stage-unknown</c>, or what stood against a commit.</returns>
    public Outcome<RunReport> BringUpToDate(StudySetup setup, StudyRegistry registry, RunRequest request)
    {
        var asked = stages.Where(stage => request.Stage is null || stage.Declaration.Name == request.Stage).ToList();
        if (asked.Count == 0)
        {
            return new Problem("stage-unknown", new Place("--stage"), $"'{request.Stage}' is no stage",
                string.Join(", ", stages.Select(stage => stage.Declaration.Name)), "Name one of these, or leave --stage out to run all.");
        }

        var runId = Guid.CreateVersion7(_time.GetUtcNow()).ToString();
        List<BoundStage> bound = [.. asked.Select(stage => stage.Bind(setup))];
        var runner = Runner(bound, setup, registry, runId, request);
        var sideBySide = (request.Parallel ?? Environment.ProcessorCount) > 1;
        if (!StageSchedule.Run(bound, runner, sideBySide).Succeeded(out var reports, out var problems))
            return Outcome<RunReport>.Failed(problems);
        var run = new RunReport(runId, reports);
        if (run.DidAnything)
            registry.Act(request.Actor, "run", _ => Details(run));
        return run;
    }

    /// <summary>Stages with units that are not up to date, and how many; a stage whose input will change with them may become so too.</summary>
    public IReadOnlyList<(string Stage, int Units)> Waiting(StudySetup setup, StudyRegistry registry)
    {
        List<BoundStage> bound = [.. stages.Select(stage => stage.Bind(setup))];
        var runner = Runner(bound, setup, registry, "", new RunRequest { Actor = "" });
        return [.. bound.Select(stage => (stage.Declaration.Name, runner.Waiting(stage))).Where(stage => stage.Item2 > 0)];
    }

    private StageRunner Runner(IReadOnlyList<BoundStage> bound, StudySetup setup, StudyRegistry registry, string runId, RunRequest request)
    {
        var store = tables ?? new TableStore(setup.Folder, _time);
        return new StageRunner(setup, registry, store, new SharedRows(bound, store), _time, runId, request);
    }

    private static string Details(RunReport run) => JsonSerializer.Serialize(new
    {
        run = run.RunId,
        stages = run.Stages.Where(stage => stage.Done.Count + stage.Removed.Count > 0)
            .Select(stage => new { stage = stage.Stage, done = stage.Done.Count, skipped = stage.Skipped, removed = stage.Removed.Count, versions = stage.Versions }),
    });
}
