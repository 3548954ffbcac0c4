using System.Security.Cryptography;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Identities;

/// <summary>Who is behind a pseudonym: names and the aliases that exports use. They stand nowhere else in a study but in originals.</summary>
public sealed class IdentityStore : IDisposable
{
    private const int KeyBytes = 32;
    private readonly SqliteConnection _connection;
    private readonly byte[] _key;

    /// <summary>Opens the store, creating it with a new random key where absent. Deleted rows are overwritten on disk.</summary>
    public IdentityStore(StudyFolder folder)
    {
        _connection = SqliteFile.Open(folder.Identities, "identities/", "PRAGMA secure_delete = ON;");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Identities, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        _connection.Execute("INSERT INTO study_key (only, key) VALUES (1, @key) ON CONFLICT DO NOTHING", new { key = RandomNumberGenerator.GetBytes(KeyBytes) });
        _key = _connection.ExecuteScalar<byte[]>("SELECT key FROM study_key")!;
    }

    /// <summary>The participant an alias stands for; null when nobody's. Case, outer and repeated blanks, and the spelling of accents do not matter.</summary>
    public ParticipantId? Resolve(string alias) =>
        _connection.QuerySingleOrDefault<string>("SELECT participant FROM aliases WHERE normalized = @normalized", new { normalized = AliasText.Normalize(alias) })
            is { } code ? new ParticipantId(code) : null;

    /// <summary>Gives a participant one more alias. The same alias again changes nothing.</summary>
    /// <returns>The participant; or the problem <c>alias-taken</c> or <c>alias-empty</c>.</returns>
    public Outcome<ParticipantId> Add(ParticipantId participant, string alias)
    {
        var normalized = AliasText.Normalize(alias);
        if (normalized.Length == 0)
            return new Problem("alias-empty", new Place("identities.db"), "an empty alias", "the name or number that exports use", "Give the text as it stands in the file.");
        _connection.Execute("INSERT INTO aliases (normalized, alias, participant) VALUES (@normalized, @alias, @code) ON CONFLICT DO NOTHING",
            new { normalized, alias, code = participant.ToString() });
        var owner = Resolve(alias)!.Value;
        return owner == participant
            ? owner
            : new Problem("alias-taken", new Place("identities.db"), $"an alias of {owner}", $"an alias that only {participant} has",
                $"Check who is meant: each alias belongs to one participant, and this one is {owner}'s.");
    }

    /// <summary>Aliases of a participant as they were given, in order.</summary>
    public IReadOnlyList<string> Aliases(ParticipantId participant) =>
        [.. _connection.Query<string>("SELECT alias FROM aliases WHERE participant = @code ORDER BY alias", new { code = participant.ToString() })];

    /// <summary>What stands in tables instead of an alias: HMAC-SHA256 under the study's key, 64 hexadecimal digits. Equal aliases have equal
    /// hashes in one study, and different ones in every other.</summary>
    public string AliasHash(string alias) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(_key, Encoding.UTF8.GetBytes(AliasText.Normalize(alias))));

    /// <summary>Stores name and contact of a participant.</summary>
    public void SetName(ParticipantId participant, string? name, string? contact) => _connection.Execute(
        """
        INSERT INTO people (participant, name, contact) VALUES (@code, @name, @contact)
        ON CONFLICT (participant) DO UPDATE SET name = excluded.name, contact = excluded.contact
        """, new { code = participant.ToString(), name, contact });

    /// <summary>Name of a participant; null when none was given.</summary>
    public string? Name(ParticipantId participant) =>
        _connection.QuerySingleOrDefault<string>("SELECT name FROM people WHERE participant = @code", new { code = participant.ToString() });

    /// <summary>Forgets a participant: aliases, name and contact, also from the write-ahead log.</summary>
    public void Forget(ParticipantId participant)
    {
        _connection.Execute("DELETE FROM aliases WHERE participant = @code; DELETE FROM people WHERE participant = @code", new { code = participant.ToString() });
        _connection.Execute("PRAGMA wal_checkpoint(TRUNCATE); VACUUM; PRAGMA wal_checkpoint(TRUNCATE);");
    }

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();
}
