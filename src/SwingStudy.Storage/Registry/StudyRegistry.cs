using System.Data.Common;
using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>The registry of a study: people by pseudonym, consent, files, sessions, decisions, protocol versions, draws, stage runs, ledger. Reading needs no lock;
/// writing happens in acts, each one transaction with its ledger entry.</summary>
public sealed class StudyRegistry : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly TimeProvider _time;

    /// <summary>Opens the registry, creating it where absent.</summary>
    /// <param name="folder">The study.</param>
    /// <param name="time">The clock for ledger entries; the system's when not given.</param>
    /// <exception cref="InvalidDataException">It was written by a newer version of the program.</exception>
    public StudyRegistry(StudyFolder folder, TimeProvider? time = null)
    {
        _connection = SqliteFile.Open(folder.Registry, "registry/", "PRAGMA secure_delete = ON;");
        _time = time ?? TimeProvider.System;
        Ledger = new Ledger(_connection);
        Protocol = new ProtocolRecords(_connection);
    }

    /// <summary>The record of every act.</summary>
    public Ledger Ledger { get; }

    /// <summary>Versions of the protocol, draws, and the analyst's blindness.</summary>
    public ProtocolRecords Protocol { get; }

    /// <summary>Does one act: its writes and its ledger entry are stored together, or neither is.</summary>
    /// <param name="actor">Who acts.</param>
    /// <param name="act">What: <c>intake.file</c>, <c>people.add</c>.</param>
    /// <param name="write">Writes, and returns the JSON object of details for the ledger: no names, no measured values. Texts that hold a
    /// pseudonym, and reasons and notes of an act about a person, are entered as keyed hashes.</param>
    /// <returns>The ledger entry.</returns>
    public LedgerEntry Act(string actor, string act, Func<RegistryAct, string> write) => Acts(actor, [(act, write)])[0];

    /// <summary>Does several acts in order, see <see cref="Act"/>: all of them are stored, or none is.</summary>
    /// <returns>The ledger entries.</returns>
    public IReadOnlyList<LedgerEntry> Acts(string actor, IEnumerable<(string Act, Func<RegistryAct, string> Write)> acts)
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        var entries = new List<LedgerEntry>();
        foreach (var (act, write) in acts)
        {
            var details = write(new RegistryAct(_connection, transaction));
            entries.Add(Ledger.Append(transaction, Instant.FromDateTimeOffset(_time.GetUtcNow()), actor, act, details));
        }

        transaction.Commit();
        return entries;
    }

    /// <summary>Stores finished units of a stage. A record of computing, not an act of a person: the run's own act stands in the ledger.</summary>
    public void Record(IReadOnlyList<StageRun> runs)
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        foreach (var run in runs)
        {
            _connection.Execute(
                """
                INSERT INTO stage_runs (run_id, stage, unit, input_hash, outputs, code_version, started_at, finished_at)
                VALUES (@RunId, @Stage, @Unit, @InputHash, @Outputs, @CodeVersion, @StartedAt, @FinishedAt)
                """, RegistryRows.Write(run), transaction);
        }

        transaction.Commit();
    }

    /// <summary>Stores what the stop rules were held against. A record of looking, not an act: what was found stands in the ledger.</summary>
    /// <param name="inputs">Hash of what was looked at, by player.</param>
    public void RecordWatched(IReadOnlyDictionary<string, Sha256> inputs)
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        foreach (var (participant, hash) in inputs)
        {
            _connection.Execute("INSERT INTO watched (participant, input_hash) VALUES (@participant, @hash) ON CONFLICT DO UPDATE SET input_hash = excluded.input_hash",
                new { participant, hash = hash.ToString() }, transaction);
        }

        transaction.Commit();
    }

    /// <summary>Takes what is known of a person away, in one transaction. No act by itself: its beginning and its end stand in the ledger.</summary>
    public void Erase(Action<RegistryErasure> erase)
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        erase(new RegistryErasure(_connection, transaction));
        transaction.Commit();
    }

    /// <summary>Names of the tables in which some text is as asked for: a search after an erasure.</summary>
    public IReadOnlyList<string> TablesWith(Func<string, bool> isAsked) =>
    [
        .. _connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name").ToList()
            .Where(table => _connection.Query<string>($"SELECT name FROM pragma_table_info('{table}') WHERE type = 'TEXT'").ToList()
                .Exists(column => _connection.Query<string>($"SELECT {column} FROM {table} WHERE {column} IS NOT NULL", buffered: false).Any(isAsked))),
    ];

    /// <summary>Writes the file anew without free pages, and empties the write-ahead log.</summary>
    public void Compact() => SqliteFile.Compact(_connection);

    /// <summary>All participants, by code.</summary>
    public IReadOnlyList<Participant> Participants() => Query("SELECT * FROM participants ORDER BY code", null, RegistryRows.Participant);

    /// <summary>One participant; null when the study has none of that code.</summary>
    public Participant? Participant(ParticipantId code) =>
        Query("SELECT * FROM participants WHERE code = @code", new { code = code.ToString() }, RegistryRows.Participant).SingleOrDefault();

    /// <summary>Consents of one participant, oldest first.</summary>
    public IReadOnlyList<Consent> Consents(ParticipantId participant) =>
        Query("SELECT * FROM consents WHERE participant = @code ORDER BY id", new { code = participant.ToString() }, RegistryRows.Consent);

    /// <summary>What is known of a participant.</summary>
    public PersonFacts Facts(ParticipantId participant) => new(participant, Query("SELECT * FROM person_facts WHERE participant = @code ORDER BY variable",
        new { code = participant.ToString() }, row => (Variable: row.Text("variable"), Value: row.Text("value"))).ToDictionary(fact => fact.Variable, fact => fact.Value, StringComparer.Ordinal));

    /// <summary>Those who have withdrawn, by code.</summary>
    public IReadOnlyList<Withdrawal> Withdrawals() => Query("SELECT * FROM withdrawals ORDER BY participant", null, RegistryRows.Withdrawal);

    /// <summary>Entries of all sessions, or of one, in the order in which they were made.</summary>
    public IReadOnlyList<SessionEntry> Entries(string? session = null) =>
        Query("SELECT * FROM session_entries WHERE @session IS NULL OR session = @session ORDER BY id", new { session }, RegistryRows.Entry);

    /// <summary>All stops of sessions, oldest first.</summary>
    public IReadOnlyList<SessionStop> Stops() => Query("SELECT * FROM stops ORDER BY id", null, RegistryRows.Stop);

    /// <summary>Hash of what the stop rules were last held against, by player.</summary>
    public IReadOnlyDictionary<string, Sha256> Watched() => Query("SELECT * FROM watched", null, row => (Participant: row.Text("participant"), Hash: new Sha256(row.Text("input_hash"))))
        .ToDictionary(row => row.Participant, row => row.Hash, StringComparer.Ordinal);

    /// <summary>All erasures, oldest first.</summary>
    public IReadOnlyList<Erasure> Erasures() => Query("SELECT * FROM erasures ORDER BY started_at, id", null, RegistryRows.Erasure);

    /// <summary>Originals that an erasure took away or cut.</summary>
    public IReadOnlyList<ErasedOriginal> ErasedOriginals() => Query("SELECT * FROM erased_originals ORDER BY sha256", null, RegistryRows.ErasedOriginal);

    /// <summary>Under which hash the bytes of an original lie now: its own, another after an erasure cut it, or null when they are gone.</summary>
    public Sha256? StoredHash(Sha256 original) =>
        Query("SELECT * FROM erased_originals WHERE sha256 = @hash", new { hash = original.ToString() }, RegistryRows.ErasedOriginal) is [var erased] ? erased.Stored : original;

    /// <summary>All files, or those of one status, in the order in which they came.</summary>
    public IReadOnlyList<IntakeFile> IntakeFiles(IntakeStatus? status = null) => Query(
        "SELECT * FROM intake_files WHERE @status IS NULL OR status = @status ORDER BY taken_at, inbox_path",
        new { status = status is { } asked ? RegistryRows.Word(asked) : null }, RegistryRows.IntakeFile);

    /// <summary>Hashes of all files that were taken.</summary>
    public IReadOnlyList<Sha256> TakenHashes() => Query("SELECT sha256 FROM intake_files WHERE status = 'taken'", null, row => new Sha256(row.Text("sha256")));

    /// <summary>The file of that hash; null when it never came.</summary>
    public IntakeFile? IntakeFile(Sha256 hash) =>
        Query("SELECT * FROM intake_files WHERE sha256 = @hash", new { hash = hash.ToString() }, RegistryRows.IntakeFile).SingleOrDefault();

    /// <summary>How often the bytes of known files came again, and how many files there are of each status.</summary>
    public IntakeCounts IntakeCounts() => Query(
        """
        SELECT (SELECT count(*) FROM intake_files WHERE status = 'taken') AS taken, (SELECT count(*) FROM intake_files WHERE status = 'held') AS held,
               (SELECT count(*) FROM intake_files WHERE status = 'rejected') AS rejected, (SELECT count(*) FROM intake_duplicates) AS duplicates,
               coalesce(sum(lines_read), 0) AS lines_read, coalesce(sum(rows_taken), 0) AS rows_taken,
               coalesce(sum(rows_rejected), 0) AS rows_rejected, coalesce(sum(lines_not_data), 0) AS lines_not_data
        FROM intake_files WHERE status = 'taken'
        """, null, RegistryRows.Counts).Single();

    /// <summary>Sessions by participant and start; of one participant when given.</summary>
    public IReadOnlyList<SessionRecord> Sessions(ParticipantId? participant = null) => Query(
        "SELECT * FROM sessions WHERE @code IS NULL OR participant = @code ORDER BY participant, started_at, id",
        new { code = participant?.ToString() }, RegistryRows.Session);

    /// <summary>Decisions, oldest first; of one kind when given.</summary>
    public IReadOnlyList<Decision> Decisions(string? kind = null) =>
        Query("SELECT * FROM decisions WHERE @kind IS NULL OR kind = @kind ORDER BY id", new { kind }, RegistryRows.Decision);

    /// <summary>The newest run of each unit of a stage.</summary>
    public IReadOnlyList<StageRun> NewestRuns(string stage) => Query(
        "SELECT * FROM stage_runs WHERE id IN (SELECT max(id) FROM stage_runs WHERE stage = @stage GROUP BY unit) ORDER BY unit",
        new { stage }, RegistryRows.StageRun);

    /// <summary>The unit that finished last; null before the first run.</summary>
    public StageRun? LastRun() => Query("SELECT * FROM stage_runs ORDER BY id DESC LIMIT 1", null, RegistryRows.StageRun).SingleOrDefault();

    /// <summary>All stage runs, oldest first.</summary>
    public IReadOnlyList<StageRun> StageRuns() => Query("SELECT * FROM stage_runs ORDER BY id", null, RegistryRows.StageRun);

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();

    private List<T> Query<T>(string sql, object? values, Func<Row, T> map) => Query(_connection, sql, values, map);

    internal static List<T> Query<T>(SqliteConnection connection, string sql, object? values, Func<Row, T> map)
    {
        using var reader = (DbDataReader)connection.ExecuteReader(sql, values);
        var rows = new List<T>();
        while (reader.Read())
            rows.Add(map(new Row(reader)));
        return rows;
    }
}
