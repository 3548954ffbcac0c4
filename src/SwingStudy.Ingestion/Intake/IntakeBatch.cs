using System.Reflection;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Files that wait for their commit, together. The order makes any interruption harmless: data files first, which nobody sees; then one commit for each
/// table; then registry and ledger in one transaction; last the inbox. What is cut short is done again to the same bytes: a batch is recorded whole or not
/// at all, so that the next run gathers the same one.
/// </summary>
internal sealed class IntakeBatch
{
    private const int MostFiles = 256;
    private const long MostRows = 1_000_000;

    /// <summary>Values that wait in memory at most, and those of one more file: 32 MiB.</summary>
    private const long MostWaiting = 1 << 22;

    /// <summary>A curve is as much work as that many rows.</summary>
    private const long CurveRows = 100;

    private readonly IntakeContext _study;
    private readonly BatchTable _rejects;
    private readonly List<PendingFile> _files = [];
    private readonly List<(Candidate Candidate, Sha256 Hash)> _copies = [];
    private long _rows;

    public IntakeBatch(IntakeContext study, IntakeTables tables)
    {
        _study = study;
        var done = study.Registry.TakenHashes().Concat(study.Registry.ErasedOriginals().Select(erased => erased.Hash)).Select(hash => hash.ToString()).ToHashSet(StringComparer.Ordinal);
        Captures = new BatchTable(tables.Captures, done);
        Curves = new BatchTable(tables.Curves, done);
        Events = new BatchTable(tables.Events, done);
        _rejects = new BatchTable(tables.Rejects, done);
    }

    /// <summary>Captures of the study and of this run.</summary>
    public BatchTable Captures { get; }

    /// <summary>Curves of captures.</summary>
    public BatchTable Curves { get; }

    /// <summary>Events that devices marked.</summary>
    public BatchTable Events { get; }

    /// <summary>Whether it is time to commit: sessions at once, because the next log is compared with them in the registry.</summary>
    public bool IsFull => _files.Count >= MostFiles || _rows >= MostRows || Tables.Sum(table => table.WaitingValues) >= MostWaiting || _files.Exists(file => file.Sessions.Count > 0);

    /// <summary>The tables in the order of their commits.</summary>
    private BatchTable[] Tables => [Curves, Events, Captures, _rejects];

    /// <summary>Adds a file.</summary>
    public void Add(PendingFile file)
    {
        var hash = file.Record.Hash;
        _files.Add(file);
        _rows += file.Data.Captures.Count + (CurveRows * file.Data.Curves.Count);
        Captures.Add(hash, file.Data.Captures);
        Curves.Add(hash, file.Data.Curves);
        Events.Add(hash, file.Data.Events);
        _rejects.Add(hash, file.Rejects);
    }

    /// <summary>A second file with the bytes of one that waits: it leaves the inbox, and is recorded as a duplicate, with that one.</summary>
    public void RemoveAfterCommit(Candidate candidate, Sha256 hash) => _copies.Add((candidate, hash));

    /// <summary>Commits what waits.</summary>
    /// <returns>All problems; then nothing is recorded, and the files stay in the inbox.</returns>
    public IReadOnlyList<Problem> Commit()
    {
        if (_files.Count == 0)
            return [];
        var unit = _files[0].Record.Hash.ToString();
        foreach (var table in Tables)
        {
            var removes = table.Leftovers.ToList();
            var adds = table.Complete(unit);
            // Tables of recordings come into being with the first of them.
            if ((adds.Count > 0 || table.Table.CurrentVersion >= 0 || table == Captures || table == _rejects) && Commit(table, adds, removes) is { Count: > 0 } problems)
                return problems;
        }

        _study.Registry.Acts(_study.Actor, [.. _files.Select(Record), .. _copies.Select(copy => RecordCopy(copy.Candidate, copy.Hash))]);
        foreach (var candidate in _files.Select(file => file.Candidate).Concat(_copies.Select(copy => copy.Candidate)).Where(candidate => candidate.Place == CandidatePlace.Inbox))
            File.Delete(candidate.Path);
        _copies.Clear();
        _files.Clear();
        _rows = 0;
        return [];
    }

    /// <summary>Takes files that a run which was cut short left in a table, and that no file of the study stands for any more, out of it again.</summary>
    /// <returns>All problems.</returns>
    public IReadOnlyList<Problem> RemoveLeftovers() =>
        [.. Tables.Where(table => table.Leftovers.Count > 0).SelectMany(table => Commit(table, [], [.. table.Leftovers]))];

    private IReadOnlyList<Problem> Commit(BatchTable table, IReadOnlyList<DataFile> adds, IReadOnlyList<string> removes) => table.Table.Commit(new TableChange
    {
        Adds = adds,
        Removes = removes,
        Info = new CommitInfo
        {
            Stage = "intake",
            CodeVersion = typeof(IntakeBatch).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion,
            DictionaryVersion = _study.Dictionary.Version,
            DictionaryHash = _study.Dictionary.Hash,
        },
    }).Problems;

    private static (string Act, Func<RegistryAct, string> Write) Record(PendingFile file) => ("intake.file", act =>
    {
        act.Save(file.Record);
        foreach (var session in file.Sessions)
            act.Save(session);
        return LedgerDetails.Taken(file);
    });

    private (string Act, Func<RegistryAct, string> Write) RecordCopy(Candidate candidate, Sha256 hash) => ("intake.duplicate", act =>
    {
        act.AddDuplicate(hash, candidate.Name, Instant.FromDateTimeOffset(_study.Time.GetUtcNow()));
        return LedgerDetails.Duplicate(hash.ToString());
    });
}
