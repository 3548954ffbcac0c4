using System.Data.Common;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>What an erasure does to the registry; see <see cref="StudyRegistry.Erase"/>. Each step may be repeated.</summary>
public sealed class RegistryErasure
{
    /// <summary>Tables that are never changed: what they hold of a person stands there as keyed hashes, or makes them part of a plan that was locked.</summary>
    private static readonly string[] Fixed = ["ledger", "protocol_versions", "unblindings", "participants", "person_keys", "sealed_texts", "erasures"];

    private readonly SqliteConnection _connection;
    private readonly DbTransaction _transaction;

    internal RegistryErasure(SqliteConnection connection, DbTransaction transaction)
    {
        _connection = connection;
        _transaction = transaction;
    }

    /// <summary>Marks a person as being erased; the mark stays until all is done.</summary>
    public void Begin(ParticipantId participant, Erasure erasure)
    {
        Execute("UPDATE participants SET status = @status WHERE code = @code", new { status = Participant.BeingErased, code = participant.ToString() });
        Execute("INSERT INTO erasures (id, started_at, document) VALUES (@Id, @at, @Document)", new { erasure.Id, at = Row.Write(erasure.StartedAt), erasure.Document });
    }

    /// <summary>Notes what can no longer be reproduced.</summary>
    public void Note(string erasure, string document) => Execute("UPDATE erasures SET document = @document WHERE id = @erasure", new { erasure, document });

    /// <summary>An original was cut: other bytes are stored for it now, or none, and lines of the person count as no data.</summary>
    /// <param name="erased">The original.</param>
    /// <param name="taken">Rows of the person that had been taken.</param>
    /// <param name="rejected">Rows of the person that had been rejected.</param>
    public void Cut(ErasedOriginal erased, long taken, long rejected)
    {
        Mark(erased);
        Execute(
            """
            UPDATE intake_files SET rows_taken = rows_taken - min(@taken, rows_taken), rows_rejected = rows_rejected - min(@rejected, rows_rejected),
                lines_not_data = lines_not_data + min(@taken, rows_taken) + min(@rejected, rows_rejected)
            WHERE sha256 = @hash AND status = 'taken'
            """, new { hash = erased.Hash.ToString(), taken, rejected });
    }

    /// <summary>An original was the person's alone: nothing is left of it, and nothing is known of it but that its bytes may not come back.</summary>
    public void Drop(ErasedOriginal erased)
    {
        Mark(erased);
        var hash = erased.Hash.ToString();
        Execute("DELETE FROM intake_duplicates WHERE sha256 = @hash", new { hash });
        Execute("DELETE FROM intake_files WHERE sha256 = @hash", new { hash });
        Execute("DELETE FROM decisions WHERE json_extract(subject, '$.file') = @hash", new { hash });
    }

    /// <summary>Takes all rows about a person away, in every table that names participants, and cuts the person's names out of all other texts.</summary>
    /// <param name="participant">The person.</param>
    /// <param name="captures">The person's captures.</param>
    /// <param name="without">A text without the person's names.</param>
    public void Remove(ParticipantId participant, IReadOnlySet<string> captures, Func<string, string> without)
    {
        var code = participant.ToString();
        foreach (var table in Tables().Where(table => !Fixed.Contains(table)))
        {
            var columns = _connection.Query<string>($"SELECT name FROM pragma_table_info('{table}')", transaction: _transaction).ToList();
            if (columns.Contains("participant"))
                Execute($"DELETE FROM {table} WHERE participant = @code", new { code });
        }

        Execute("DELETE FROM session_revisions WHERE id LIKE @sessions", new { sessions = code + "-%" });
        Execute("DELETE FROM stage_runs WHERE unit = @code OR unit LIKE @units OR outputs LIKE @outputs", new { code, units = code + "-%", outputs = $"%participant={code}/%" });
        foreach (var decision in _connection.Query<(long Id, string Subject)>("SELECT id, subject FROM decisions", transaction: _transaction).ToList())
        {
            if (IsAbout(decision.Subject, code, captures))
                Execute("DELETE FROM decisions WHERE id = @Id", new { decision.Id });
        }

        CutTexts(without);
        // A sealed text cannot be cut without breaking its hash: what the ledger sealed under the key of somebody else is no longer readable then.
        foreach (var hash in _connection.Query<(string Hash, string Text)>("SELECT hash, text FROM sealed_texts", transaction: _transaction)
            .Where(row => without(row.Text) != row.Text).Select(row => row.Hash).Distinct().ToList())
            Execute("DELETE FROM sealed_texts WHERE hash = @hash", new { hash });
    }

    /// <summary>Ends an erasure: the mark goes, and so do the key and the texts by which entries of the ledger could be read.</summary>
    public void Finish(ParticipantId participant, string erasure, Instant at)
    {
        var code = participant.ToString();
        Execute("DELETE FROM sealed_texts WHERE hash IN (SELECT hash FROM sealed_texts WHERE participant = @code)", new { code });
        Execute("DELETE FROM person_keys WHERE participant = @code", new { code });
        Execute("DELETE FROM participants WHERE code = @code", new { code });
        Execute("UPDATE erasures SET finished_at = @at WHERE id = @erasure", new { at = Row.Write(at), erasure });
    }

    private void Mark(ErasedOriginal erased) => Execute(
        "INSERT INTO erased_originals (sha256, stored, erasure) VALUES (@hash, @stored, @Erasure) ON CONFLICT DO UPDATE SET stored = excluded.stored, erasure = excluded.erasure",
        new { hash = erased.Hash.ToString(), stored = erased.Stored?.ToString(), erased.Erasure });

    private static bool IsAbout(string subject, string code, IReadOnlySet<string> captures) => JsonNode.Parse(subject) is JsonObject members
        && members.Any(member => member.Value is JsonValue value && value.GetValueKind() == JsonValueKind.String && value.GetValue<string>() is { } text
            && (text == code || text.StartsWith(code + "-", StringComparison.Ordinal) || captures.Contains(text)));

    private List<string> Tables() =>
        _connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name", transaction: _transaction).ToList();

    private void CutTexts(Func<string, string> without)
    {
        foreach (var table in Tables().Where(table => !Fixed.Contains(table)))
        {
            foreach (var column in _connection.Query<string>($"SELECT name FROM pragma_table_info('{table}') WHERE type = 'TEXT'", transaction: _transaction).ToList())
            {
                foreach (var (id, text) in _connection.Query<(long Id, string Text)>($"SELECT rowid, {column} FROM {table} WHERE {column} IS NOT NULL", transaction: _transaction).ToList())
                {
                    if (Cut(text, without) is var cut && cut != text)
                        Execute($"UPDATE {table} SET {column} = @cut WHERE rowid = @id", new { cut, id });
                }
            }
        }
    }

    /// <summary>A JSON document is cut text by text, so that it stays one and no escape hides a name.</summary>
    private static string Cut(string text, Func<string, string> without)
    {
        if (text.Length == 0 || text[0] is not ('{' or '['))
            return without(text);
        JsonNode? node;
        try
        {
            node = JsonNode.Parse(text);
        }
        catch (JsonException)
        {
            return without(text);
        }

        var changed = false;
        var cut = Cut(node, without, ref changed);
        return changed ? cut!.ToJsonString() : text;
    }

    private static JsonNode? Cut(JsonNode? node, Func<string, string> without, ref bool changed)
    {
        switch (node)
        {
            case JsonObject members:
                var copy = new JsonObject();
                foreach (var (name, value) in members)
                    copy[name] = Cut(value, without, ref changed);
                return copy;
            case JsonArray items:
                var array = new JsonArray();
                foreach (var item in items)
                    array.Add(Cut(item, without, ref changed));
                return array;
            case JsonValue value when value.GetValueKind() == JsonValueKind.String:
                var text = value.GetValue<string>();
                var left = without(text);
                changed |= left != text;
                return JsonValue.Create(left);
            default:
                return node?.DeepClone();
        }
    }

    private void Execute(string sql, object values) => _connection.Execute(sql, values, _transaction);
}
