using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Takes exports in: the bytes first, then each file whole or not at all. A run can be cut short at any moment; the next one ends in the same tables.
/// </summary>
/// <param name="study">The study, opened for writing.</param>
public sealed class StudyIntake(IntakeContext study)
{
    /// <summary>Copies that a killed run left are older than this; the writer's lock keeps other intakes away, and readers are quicker.</summary>
    private static readonly TimeSpan Unfinished = TimeSpan.FromHours(1);

    private readonly IntakeTables _tables = new(study.Tables, study.Dictionary);

    /// <summary>Names of the tables that it writes.</summary>
    public static IReadOnlyList<string> TableNames { get; } = ["captures", "curves", "capture_events", "rejects"];

    /// <summary>Takes in the given files, or all of the inbox, and tries the held files again.</summary>
    /// <param name="files">Paths of files, one that is named twice counting once; null or empty: the inbox.</param>
    /// <param name="progress">Is told how far the run is.</param>
    /// <returns>What became of each file; or the problems for which a table could not be committed.</returns>
    public Outcome<IntakeReport> Run(IReadOnlyList<string>? files = null, Action<IntakeProgress>? progress = null)
    {
        // Asked for once: originals are stored on other threads than the one that may read identities.
        var keys = study.Identities.OriginalKeys;
        using var originals = new OriginalStore(study.Folder, () => keys);
        originals.ClearUnfinished(study.Time.GetUtcNow() - Unfinished);
        originals.SealAll();
        var arrived = files is { Count: > 0 } ? files.Select(file => InboxScan.Named(study.Folder, file)).DistinctBy(candidate => candidate.Path) : InboxScan.Files(study.Folder);
        var choice = new MappingChoice(study.Mappings, study.Dictionary);
        Candidate[] candidates = [.. arrived.Concat(HeldFiles(originals))
            .OrderBy(candidate => choice.IndexOf(candidate) is null).ThenBy(choice.IsRevision).ThenBy(candidate => candidate.Name, NaturalOrder.Instance).ThenBy(candidate => candidate.Place)];
        var batch = new IntakeBatch(study, _tables);
        var results = new List<FileResult>();
        var settled = new SettledFiles(study.Time, study.Settling).Look([.. candidates.Where(candidate => candidate.Place != CandidatePlace.Originals)]);
        using var arrivals = new StoredAhead(originals, [.. candidates.Where(candidate => candidate.Held is null && settled.GetValueOrDefault(candidate.Path) is null)]);
        var taking = new FileTaking(study, originals, arrivals, _tables, choice, batch);
        var (done, total) = (0L, candidates.Sum(candidate => candidate.Size));
        foreach (var candidate in candidates)
        {
            var before = done;
            var at = results.Count;
            void Tell(double share) =>
                progress?.Invoke(new IntakeProgress(candidate.Name, before + (long)(share * candidate.Size), total, at, candidates.Length));
            Tell(0);
            var result = settled.GetValueOrDefault(candidate.Path) is { } problem
                ? new FileResult { File = candidate.Name, Outcome = FileOutcome.NotRead, Problems = [problem] }
                : taking.Take(candidate, Tell);
            if (result is not null)
                results.Add(result);
            done += candidate.Size;
            if (batch.IsFull && batch.Commit() is { Count: > 0 } problems)
                return Outcome<IntakeReport>.Failed(problems);
        }

        if (batch.Commit() is { Count: > 0 } failed)
            return Outcome<IntakeReport>.Failed(failed);
        if (batch.RemoveLeftovers() is { Count: > 0 } against)
            return Outcome<IntakeReport>.Failed(against);
        progress?.Invoke(new IntakeProgress("", total, total, results.Count, candidates.Length));
        return new IntakeReport(results);
    }

    private IEnumerable<Candidate> HeldFiles(OriginalStore originals) => study.Registry.IntakeFiles(IntakeStatus.Held)
        .Select(file => new Candidate(file.InboxPath, originals.PathOf(study.Registry.StoredHash(file.Hash) ?? file.Hash), CandidatePlace.Originals, file.Size, file.Hash));
}
