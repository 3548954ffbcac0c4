using System.Collections.Concurrent;
using NodaTime;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>Brings one stage up to date.</summary>
internal sealed class StageRunner(
    StudySetup setup, StudyRegistry registry, TableStore tables, SharedRows sharedRows, TimeProvider time, string runId, RunRequest request)
{
    private readonly Lock _oneAtATime = new();
    private readonly int _parallel = request.Parallel ?? Environment.ProcessorCount;
    private ILookup<string, SessionRecord>? _sessions;

    /// <summary>Computes what changed and writes its files. Several stages may be computed at the same time.</summary>
    public ComputedStage Compute(BoundStage stage)
    {
        var files = new InputFiles(stage, tables, sharedRows);
        var active = Active(stage.Outputs.Values.Select(tables.Table));
        var plan = Plan(stage, files, Done(stage), active.Select(file => file.Name).ToHashSet(StringComparer.Ordinal));
        var units = plan.All.ToHashSet(StringComparer.Ordinal);
        var gone = active.Where(file => !units.Contains(file.File.Unit) && IsAsked(file.File.Partition)).Select(file => file.File.Unit)
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (plan.Todo.Count > 0 && _parallel > 1)
        {
            var replaced = plan.Todo.SelectMany(planned => planned.Unit.Names).Concat(gone).ToHashSet(StringComparer.Ordinal);
            _ = sharedRows.ReadAhead(active.Where(file => !replaced.Contains(file.File.Unit)).Select(file => (file.Table, file.File)));
        }

        return new ComputedStage(stage, files, Compute(stage, files, plan, tables), plan.Skipped, gone);
    }

    /// <summary>Commits each output table once, then records the units. Cut short anywhere, the stage is simply run again: the same files come out under
    /// the same names, and committing what is there already changes nothing.</summary>
    public Outcome<StageReport> Store(ComputedStage computed)
    {
        var (stage, results) = (computed.Stage, computed.Results);
        var versions = Commit(stage, computed.Files, [.. stage.Outputs.Values.Select(tables.Table)], results, computed.Gone);
        if (!versions.Succeeded(out var committed, out var problems))
            return Outcome<StageReport>.Failed(problems);
        lock (_oneAtATime)
            registry.Record([.. results.Select(result => result.AsRun(stage.Declaration, runId))]);
        return new StageReport(stage.Declaration.Name, [.. results.Select(result => result.Unit.Name)], computed.Skipped, computed.Gone, committed);
    }

    /// <summary>How many units are not up to date with the input tables as they now are.</summary>
    public int Waiting(BoundStage stage)
    {
        var active = Active(stage.Outputs.Values.Select(tables.Table)).Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
        return Plan(stage, new InputFiles(stage, tables, sharedRows), Done(stage), active).Todo.Count;
    }

    /// <summary>Computes all units again into <paramref name="scratch"/>; the study's tables and registry stay as they are.</summary>
    public IReadOnlyList<FinishedUnit> Recompute(BoundStage stage, TableStore scratch)
    {
        var files = new InputFiles(stage, tables, sharedRows);
        return Compute(stage, files, Plan(stage, files, new Dictionary<string, StageRun>(StringComparer.Ordinal), []), scratch);
    }

    private Dictionary<string, StageRun> Done(BoundStage stage)
    {
        lock (_oneAtATime)
            return registry.NewestRuns(stage.Declaration.Name).ToDictionary(run => run.Unit, StringComparer.Ordinal);
    }

    private List<(Decision Decision, DecisionSubject Subject)> Decisions(BoundStage stage)
    {
        lock (_oneAtATime)
        {
            return [.. stage.Declaration.Decisions.SelectMany(kind => registry.Decisions(kind)).OrderBy(decision => decision.Id)
                .Select(decision => (decision, DecisionSubject.Of(decision)))];
        }
    }

    /// <summary>Sessions by player; no stage changes them.</summary>
    private ILookup<string, SessionRecord> Sessions()
    {
        lock (_oneAtATime)
            return _sessions ??= PlayedSessions.Of(registry).ToLookup(session => session.Participant.ToString(), StringComparer.Ordinal);
    }

    private static List<(string Name, string Table, DataFile File)> Active(IEnumerable<DeltaTable> outputs) =>
        [.. outputs.SelectMany(table => table.Files().Select(file => ($"{table.Definition.Name}/{file.Path}", table.Definition.Name, file)))];

    private StagePlan Plan(BoundStage stage, InputFiles files, Dictionary<string, StageRun> done, HashSet<string> active)
    {
        var decisions = Decisions(stage);
        var (all, todo, skipped) = (new List<string>(), new List<PlannedUnit>(), 0);
        foreach (var unit in Units(stage, files))
        {
            var own = files.For(unit);
            if (unit.Name != WorkUnit.Study && own.All(list => list.Count == 0))
                continue;
            all.AddRange(unit.Names);
            if (!IsAsked(unit))
                continue;
            IReadOnlyList<Decision> concerning = [.. decisions.Where(decision => Concerns(decision.Subject, unit)).Select(decision => decision.Decision)];
            var hash = InputHash.Of(stage, setup, unit, own, concerning);
            if (done.TryGetValue(unit.Name, out var run) && run.InputHash == hash && run.Outputs.All(active.Contains))
                skipped++;
            else
                todo.Add(new PlannedUnit(unit, own, concerning, hash));
        }

        return new StagePlan(all, todo, skipped);
    }

    private bool IsAsked(WorkUnit unit) => unit.Sessions.Count == 0 ? IsAsked(unit.Participant) : unit.Sessions.Any(session => IsAsked(session.Participant));

    private static bool Concerns(DecisionSubject subject, WorkUnit unit) => unit.Sessions.Count == 0
        ? subject.Concerns(unit.Participant)
        : unit.Sessions.Any(session => subject.Concerns(session.Participant));

    private bool IsAsked(string? participant) => request.Participant is null || participant is null || participant == request.Participant;

    private IEnumerable<WorkUnit> Units(BoundStage stage, InputFiles files)
    {
        if (stage.Declaration.Unit == UnitOfWork.Study)
            return [new WorkUnit(WorkUnit.Study, null, null, [])];
        var sessions = Sessions();
        var participants = files.Participants.Concat(sessions.Select(group => group.Key)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        if (stage.Declaration.Unit == UnitOfWork.Participant)
            return participants.Select(participant => new WorkUnit(participant, participant, null, []));
        var zone = DateTimeZoneProviders.Tzdb[setup.Declaration.Zone];
        var units = participants.SelectMany(participant => SessionTimes.Units(participant, sessions[participant], zone));
        return stage.Declaration.Unit == UnitOfWork.Day ? DayUnits.Of(units, zone) : units;
    }

    /// <summary>Works player by player, and days in runs of neighbours, so that neighbours share what was read; results are put in order of units.</summary>
    private IReadOnlyList<FinishedUnit> Compute(BoundStage stage, InputFiles files, StagePlan plan, TableStore store)
    {
        var results = new ConcurrentBag<FinishedUnit>();
        var (days, others) = (plan.Todo.Where(unit => unit.Unit.Sessions.Count > 0).ToList(), plan.Todo.Where(unit => unit.Unit.Sessions.Count == 0));
        List<IEnumerable<PlannedUnit>> groups =
        [
            .. days.Chunk(Math.Max(1, (days.Count + _parallel - 1) / _parallel)),
            .. others.GroupBy(unit => unit.Unit.Participant ?? "", StringComparer.Ordinal),
        ];
        var done = 0;
        Parallel.ForEach(groups, new ParallelOptions { MaxDegreeOfParallelism = _parallel }, group =>
        {
            var kept = new Dictionary<string, RowSet>(StringComparer.Ordinal);
            foreach (var planned in group)
            {
                results.Add(Finish(stage, files, planned, kept, store));
                request.Progress?.Report(new RunProgress(stage.Declaration.Name, Interlocked.Increment(ref done), plan.Todo.Count, plan.Skipped));
            }
        });
        return [.. results.OrderBy(result => result.Unit.Name, StringComparer.Ordinal)];
    }

    private FinishedUnit Finish(BoundStage stage, InputFiles files, PlannedUnit planned, Dictionary<string, RowSet> kept, TableStore store)
    {
        var started = Instant.FromDateTimeOffset(time.GetUtcNow());
        var input = new StageInput(stage.Declaration, planned.Unit, files.Read(planned.Unit, planned.Files, kept), stage.Outputs, planned.Decisions);
        var written = new List<(string Table, DataFile File)>();
        foreach (var rows in stage.Run(input))
        {
            var table = stage.Outputs.TryGetValue(rows.Table.Name, out var definition)
                ? store.Table(definition)
                : throw new InvalidOperationException($"The stage '{stage.Declaration.Name}' does not declare that it writes '{rows.Table.Name}'.");
            foreach (var (participant, unit, share) in Shares(planned.Unit, rows))
            {
                using var writer = table.NewFile(definition.PartitionColumn is null ? null : participant, unit);
                writer.Append(share);
                written.Add((rows.Table.Name, writer.Complete()));
            }
        }

        return new FinishedUnit(planned.Unit, planned.Hash, written, started, Instant.FromDateTimeOffset(time.GetUtcNow()));
    }

    /// <summary>Rows as they go into files: those of a day are parted by player and session.</summary>
    private static IEnumerable<(string? Participant, string Unit, RowSet Rows)> Shares(WorkUnit unit, RowSet rows)
    {
        if (rows.Count == 0)
            return [];
        if (unit.Sessions.Count == 0)
            return [(unit.Participant, unit.Name, rows)];
        var (participants, sessions) = (rows.Texts("participant"), rows.Texts("session"));
        return Enumerable.Range(0, rows.Count).GroupBy(row => (Participant: participants[row], Session: sessions[row] ?? unit.Name))
            .OrderBy(group => group.Key.Participant, StringComparer.Ordinal).ThenBy(group => group.Key.Session, StringComparer.Ordinal)
            .Select(group => (group.Key.Participant, group.Key.Session, rows.Select([.. group])));
    }

    private Outcome<Dictionary<string, long>> Commit(
        BoundStage stage, InputFiles files, IReadOnlyList<DeltaTable> outputs, IReadOnlyList<FinishedUnit> results, IReadOnlyList<string> gone)
    {
        var versions = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var table in outputs)
        {
            var name = table.Definition.Name;
            var committed = table.Commit(new TableChange
            {
                Adds = [.. results.SelectMany(result => result.Written).Where(file => file.Table == name).Select(file => file.File)],
                ReplacedUnits = [.. results.SelectMany(result => result.Unit.Names), .. gone],
                Info = new CommitInfo
                {
                    Stage = stage.Declaration.Name,
                    CodeVersion = stage.Declaration.CodeVersion,
                    RunId = runId,
                    DictionaryVersion = setup.Dictionary.Version,
                    DictionaryHash = setup.Dictionary.Hash,
                    Inputs = files.Versions,
                },
            });
            if (!committed.Succeeded(out var version, out var problems))
                return Outcome<Dictionary<string, long>>.Failed(problems);
            versions[name] = version;
        }

        return versions;
    }
}
