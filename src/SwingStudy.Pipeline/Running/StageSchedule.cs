using SwingStudy.Domain.Problems;

namespace SwingStudy.Pipeline.Running;

/// <summary>Computes stages side by side where none reads what another is about to write, and stores what they made in the order of the stages.</summary>
/// <remarks>What lies on disk, and in which order it came there, does not depend on how fast a stage is: a stage that is done early waits until those before it are
/// stored.</remarks>
internal static class StageSchedule
{
    /// <summary>Runs stages in their order, or side by side.</summary>
    /// <param name="stages">Stages, each after those whose tables it reads.</param>
    /// <param name="runner">Does the work of a stage.</param>
    /// <param name="sideBySide">Whether stages may be computed at the same time.</param>
    /// <returns>What was done, in order of stages; or what stood against the first commit that failed: nothing of the stages after it is stored.</returns>
    public static Outcome<IReadOnlyList<StageReport>> Run(IReadOnlyList<BoundStage> stages, StageRunner runner, bool sideBySide)
    {
        var stored = new List<Task<Outcome<StageReport>>>();
        foreach (var stage in stages)
        {
            Task[] needed = [.. stored.Where((_, earlier) => !sideBySide || stage.Inputs.Any(input => stages[earlier].Outputs.ContainsKey(input.Table.Name)))];
            stored.Add(RunAsync(stage, runner, needed, stored.Count == 0 ? null : stored[^1]));
        }

        // A fault leaves only when nothing works any more, and the first in order is the one that is told.
        Task.WhenAll((IEnumerable<Task>)stored).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing).GetAwaiter().GetResult();
        var reports = new List<StageReport>();
        foreach (var outcome in stored.Select(task => task.GetAwaiter().GetResult()))
        {
            if (!outcome.Succeeded(out var report, out var problems))
                return Outcome<IReadOnlyList<StageReport>>.Failed(problems);
            reports.Add(report);
        }

        return Outcome<IReadOnlyList<StageReport>>.Of(reports);
    }

    private static async Task<Outcome<StageReport>> RunAsync(BoundStage stage, StageRunner runner, Task[] needed, Task<Outcome<StageReport>>? before)
    {
        await Task.WhenAll(needed).ConfigureAwait(false);
        // Where a commit before this one failed already, nothing is worth computing.
        if (before is { IsCompletedSuccessfully: true, Result.Problems.Count: > 0 })
            return await before.ConfigureAwait(false);
        // A thread of its own: it waits for those that encode files.
        var computed = await Task.Factory.StartNew(() => runner.Compute(stage), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).ConfigureAwait(false);
        if (before is not null && await before.ConfigureAwait(false) is { Problems.Count: > 0 } failed)
            return failed;
        return runner.Store(computed);
    }
}
