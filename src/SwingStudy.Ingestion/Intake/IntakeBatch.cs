using System.Reflection;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Files whose rows are written and wait for their commit. The order makes any interruption harmless: data files first, which nobody sees; then one
/// commit for each table; then registry and ledger in one transaction a file; last the inbox. What is cut short is done again to the same bytes.
/// </summary>
internal sealed class IntakeBatch(IntakeContext study, IntakeTables tables)
{
    private const int MostFiles = 64;
    private const long MostRows = 1_000_000;

    /// <summary>A curve is as much work as that many rows.</summary>
    private const long CurveRows = 100;

    private readonly List<PendingFile> _files = [];
    private readonly List<(Candidate Candidate, Sha256 Hash)> _copies = [];
    private long _rows;

    /// <summary>Whether it is time to commit: sessions at once, because the next log is compared with them in the registry.</summary>
    public bool IsFull => _files.Count >= MostFiles || _rows >= MostRows || _files.Exists(file => file.Sessions.Count > 0);

    /// <summary>Adds a file.</summary>
    public void Add(PendingFile file)
    {
        _files.Add(file);
        _rows += file.Captures.Sum(data => data.Rows) + (CurveRows * file.Curves.Sum(data => data.Rows));
    }

    /// <summary>A second file with the bytes of one that waits: it leaves the inbox, and is recorded as a duplicate, once that one is recorded.</summary>
    public void RemoveAfterCommit(Candidate candidate, Sha256 hash) => _copies.Add((candidate, hash));

    /// <summary>Commits what waits.</summary>
    /// <returns>All problems; then nothing is recorded, and the files stay in the inbox.</returns>
    public IReadOnlyList<Problem> Commit()
    {
        if (_files.Count == 0)
            return [];
        string[] units = [.. _files.Select(file => file.Record.Hash.ToString())];
        var problems = CommitRecorded(tables.Curves, [.. _files.SelectMany(file => file.Curves)], units);
        if (problems.Count == 0)
            problems = CommitRecorded(tables.Events, [.. _files.SelectMany(file => file.Events)], units);
        if (problems.Count == 0)
            problems = Commit(tables.Captures, [.. _files.SelectMany(file => file.Captures)], units);
        if (problems.Count == 0)
            problems = Commit(tables.Rejects, [.. _files.SelectMany(file => file.Rejects)], units);
        if (problems.Count > 0)
            return problems;
        foreach (var file in _files)
            Record(file);
        foreach (var (candidate, hash) in _copies)
            RecordCopy(candidate, hash);
        _copies.Clear();
        _files.Clear();
        _rows = 0;
        return [];
    }

    /// <summary>Takes rows that a run which was cut short left in a table, and that no file of the study stands for any more, out of it again.</summary>
    public void RemoveUnfinished(IReadOnlyCollection<string> units)
    {
        foreach (var table in tables.All)
        {
            if (table.Files().Any(file => units.Contains(file.Unit)))
                Commit(table, [], [.. units]);
        }
    }

    /// <summary>Tables of recordings come into being with the first of them.</summary>
    private IReadOnlyList<Problem> CommitRecorded(DeltaTable table, DataFile[] adds, string[] units) =>
        adds.Length > 0 || table.CurrentVersion >= 0 ? Commit(table, adds, units) : [];

    private IReadOnlyList<Problem> Commit(DeltaTable table, DataFile[] adds, string[] units) => table.Commit(new TableChange
    {
        Adds = adds,
        ReplacedUnits = units,
        Info = new CommitInfo
        {
            Stage = "intake",
            CodeVersion = typeof(IntakeBatch).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion,
            DictionaryVersion = study.Dictionary.Version,
            DictionaryHash = study.Dictionary.Hash,
        },
    }).Problems;

    private void Record(PendingFile file)
    {
        study.Registry.Act(study.Actor, "intake.file", act =>
        {
            act.Save(file.Record);
            foreach (var session in file.Sessions)
                act.Save(session);
            return LedgerDetails.Taken(file);
        });
        if (file.Candidate.Place == CandidatePlace.Inbox)
            File.Delete(file.Candidate.Path);
    }

    private void RecordCopy(Candidate candidate, Sha256 hash)
    {
        study.Registry.Act(study.Actor, "intake.duplicate", act =>
        {
            act.AddDuplicate(hash, candidate.Name, Instant.FromDateTimeOffset(study.Time.GetUtcNow()));
            return LedgerDetails.Duplicate(hash.ToString());
        });
        if (candidate.Place == CandidatePlace.Inbox)
            File.Delete(candidate.Path);
    }
}
