using System.Data.Common;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Protocols;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>What may be written within one act; see <see cref="StudyRegistry.Act"/>.</summary>
public sealed class RegistryAct
{
    private readonly SqliteConnection _connection;
    private readonly DbTransaction _transaction;

    internal RegistryAct(SqliteConnection connection, DbTransaction transaction)
    {
        _connection = connection;
        _transaction = transaction;
    }

    /// <summary>Adds a participant, or changes the status of one.</summary>
    public void Save(Participant participant) => Execute(
        """
        INSERT INTO participants (code, status, added_at) VALUES (@code, @status, @at)
        ON CONFLICT (code) DO UPDATE SET status = excluded.status
        """, new { code = participant.Code.ToString(), status = participant.Status, at = Row.Write(participant.AddedAt) });

    /// <summary>Adds a consent; an earlier one stays in the record.</summary>
    public void Add(Consent consent) => Execute(
        """
        INSERT INTO consents (participant, scope, given, signer, at, version, language, signed_on, taken_by, note)
        VALUES (@Participant, @Scope, @Given, @Signer, @At, @Version, @Language, @SignedOn, @TakenBy, @Note)
        """, RegistryRows.Write(consent));

    /// <summary>Records facts of a participant; a variable that is not named keeps its value.</summary>
    public void Save(PersonFacts facts)
    {
        foreach (var (variable, value) in facts.Values)
        {
            Execute("INSERT INTO person_facts (participant, variable, value) VALUES (@code, @variable, @value) ON CONFLICT DO UPDATE SET value = excluded.value",
                new { code = facts.Participant.ToString(), variable, value });
        }
    }

    /// <summary>Records that a participant withdraws; said again, the newest word about earlier data holds.</summary>
    public void Save(Withdrawal withdrawal) => Execute(
        """
        INSERT INTO withdrawals (participant, earlier, at, actor, note) VALUES (@code, @earlier, @at, @Actor, @Note)
        ON CONFLICT DO UPDATE SET earlier = excluded.earlier, at = excluded.at, actor = excluded.actor, note = excluded.note
        """, new
        {
            code = withdrawal.Participant.ToString(),
            earlier = withdrawal.KeepsEarlier ? RegistryRows.Keep : RegistryRows.LeaveOut,
            at = Row.Write(withdrawal.At),
            withdrawal.Actor,
            withdrawal.Note,
        });

    /// <summary>Adds an entry to a session.</summary>
    /// <returns>Its number.</returns>
    public long Add(SessionEntry entry) => _connection.ExecuteScalar<long>(
        "INSERT INTO session_entries (session, participant, kind, at, actor, document) VALUES (@Session, @code, @Kind, @at, @Actor, @Document) RETURNING id",
        new { entry.Session, code = entry.Participant.ToString(), entry.Kind, at = Row.Write(entry.At), entry.Actor, entry.Document }, _transaction);

    /// <summary>Stops a session; evidence that stopped it before changes nothing.</summary>
    public void Add(SessionStop stop) => Execute(
        "INSERT INTO stops (session, participant, evidence, rule, detail, at) VALUES (@Session, @code, @Evidence, @Rule, @Detail, @at) ON CONFLICT DO NOTHING",
        new { stop.Session, code = stop.Participant.ToString(), stop.Evidence, stop.Rule, stop.Detail, at = Row.Write(stop.At) });

    /// <summary>Lets a stopped session go on.</summary>
    /// <returns>How many stops that ended.</returns>
    public int Resume(string session, string reason, string actor, Instant at) => Execute(
        "UPDATE stops SET resumed_at = @at, resumed_by = @actor, resumed_reason = @reason WHERE session = @session AND resumed_at IS NULL",
        new { session, reason, actor, at = Row.Write(at) });

    /// <summary>Stores what became of a file; a held file that is taken later is overwritten, a taken one never is by a held one.</summary>
    /// <exception cref="InvalidOperationException">The file is taken already, or the lines of a taken file do not add up.</exception>
    public void Save(IntakeFile file)
    {
        if (file.Status == IntakeStatus.Taken && file.LinesRead != file.RowsTaken + file.RowsRejected + file.LinesNotData)
        {
            throw new InvalidOperationException(
                $"{file.InboxPath}: {file.LinesRead} lines read are not {file.RowsTaken} taken + {file.RowsRejected} rejected + {file.LinesNotData} not data.");
        }

        var changed = Execute(
            """
            INSERT INTO intake_files (sha256, source, inbox_path, size, status, lines_read, rows_taken, rows_rejected, lines_not_data, mapping_hash,
                                      encoding, delimiter, decimal_mark, preamble, hold_reasons, details, taken_at)
            VALUES (@Hash, @Source, @InboxPath, @Size, @Status, @LinesRead, @RowsTaken, @RowsRejected, @LinesNotData, @MappingHash,
                    @Encoding, @Delimiter, @DecimalMark, @Preamble, @HoldReasons, @Details, @At)
            ON CONFLICT (sha256) DO UPDATE SET source = excluded.source, inbox_path = excluded.inbox_path, status = excluded.status,
                lines_read = excluded.lines_read, rows_taken = excluded.rows_taken, rows_rejected = excluded.rows_rejected,
                lines_not_data = excluded.lines_not_data, mapping_hash = excluded.mapping_hash, encoding = excluded.encoding,
                delimiter = excluded.delimiter, decimal_mark = excluded.decimal_mark, preamble = excluded.preamble,
                hold_reasons = excluded.hold_reasons, details = excluded.details, taken_at = excluded.taken_at
            WHERE intake_files.status <> 'taken'
            """, RegistryRows.Write(file));
        if (changed == 0)
            throw new InvalidOperationException($"{file.InboxPath} ({file.Hash.Short}) is taken already.");
    }

    /// <summary>Notes that the bytes of a known file came again.</summary>
    public void AddDuplicate(Sha256 hash, string inboxPath, Instant seenAt) => Execute(
        "INSERT INTO intake_duplicates (sha256, inbox_path, seen_at) VALUES (@hash, @inboxPath, @at)",
        new { hash = hash.ToString(), inboxPath, at = Row.Write(seenAt) });

    /// <summary>Adds a session, or corrects one: the earlier form is kept as a revision. A session that does not differ changes nothing.</summary>
    /// <returns>Whether anything changed.</returns>
    public bool Save(SessionRecord session)
    {
        var earlier = StudyRegistry.Query(_connection, "SELECT * FROM sessions WHERE id = @Id", new { session.Id }, RegistryRows.Session).SingleOrDefault();
        if (earlier is not null)
        {
            if (earlier with { Revision = 0 } == session with { Revision = 0 })
                return false;
            Execute("INSERT INTO session_revisions (id, revision, document) VALUES (@Id, @Revision, @document)",
                new { earlier.Id, earlier.Revision, document = JsonSerializer.Serialize(RegistryRows.Write(earlier)) });
        }

        Execute(
            """
            INSERT OR REPLACE INTO sessions (id, participant, started_at, started_local, phase, site, club, ball, surface, cue, planned_swings,
                                             variables, note, original_sha256, original_row, revision)
            VALUES (@Id, @Participant, @StartedAt, @StartedLocal, @Phase, @Site, @Club, @Ball, @Surface, @Cue, @PlannedSwings,
                    @Variables, @Note, @Original, @OriginalRow, @Revision)
            """, RegistryRows.Write(session with { Revision = (earlier?.Revision ?? 0) + 1 }));
        return true;
    }

    /// <summary>Adds a decision.</summary>
    /// <returns>Its number.</returns>
    public long Add(Decision decision) => _connection.ExecuteScalar<long>(
        "INSERT INTO decisions (kind, subject, reason, actor, at) VALUES (@Kind, @Subject, @Reason, @Actor, @at) RETURNING id",
        new { decision.Kind, decision.Subject, decision.Reason, decision.Actor, at = Row.Write(decision.At) }, _transaction);

    /// <summary>Adds a version of the protocol: the lock, or an amendment.</summary>
    public void Add(ProtocolVersion version) => Execute(
        """
        INSERT INTO protocol_versions (number, hash, version, text, comparisons, taken, reason, known, actor, at)
        VALUES (@Number, @Hash, @Version, @Text, @Comparisons, @Taken, @Reason, @Known, @Actor, @At)
        """, ProtocolRows.Write(version));

    /// <summary>Adds a draw with its players.</summary>
    public void Add(Draw draw)
    {
        Execute(
            """
            INSERT INTO draws (number, protocol_version, kind, seed, is_joint, order_drawn, windows, assignments, actor, at)
            VALUES (@Number, @ProtocolVersion, @Kind, @Seed, @IsJoint, @OrderDrawn, @Windows, @Assignments, @Actor, @At)
            """, ProtocolRows.Write(draw));
        foreach (var player in draw.Players)
        {
            Execute(
                "INSERT INTO drawn_players (draw, participant, admissible, assignment, tier, phases) VALUES (@draw, @Participant, @Admissible, @Assignment, @Tier, @Phases)",
                ProtocolRows.Write(draw.Number, player));
        }
    }

    /// <summary>Adds the code of a phase or contrast; one that has a code keeps it.</summary>
    public void Add(MaskedName name) =>
        Execute("INSERT INTO masked_names (kind, name, code) VALUES (@Kind, @Name, @Code) ON CONFLICT (kind, name) DO NOTHING", name);

    /// <summary>Ends the analyst's blindness.</summary>
    public void Add(Unblinding unblinding) => Execute(
        "INSERT INTO unblindings (reason, known, actor, at) VALUES (@Reason, @Known, @Actor, @at)",
        new { unblinding.Reason, unblinding.Known, unblinding.Actor, at = Row.Write(unblinding.At) });

    private int Execute(string sql, object values) => _connection.Execute(sql, values, _transaction);
}
