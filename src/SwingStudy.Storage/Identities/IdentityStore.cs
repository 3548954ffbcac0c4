using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Originals;

namespace SwingStudy.Storage.Identities;

/// <summary>
/// Who is behind a pseudonym: names, contacts and the aliases that exports use. They stand nowhere else in a study but in originals. Aliases are
/// found by their keyed hashes, so that intake works while the vault is locked; the texts are encrypted once there is a vault.
/// </summary>
public sealed class IdentityStore : IDisposable
{
    private const int KeyBytes = 32;
    private const string NamesPurpose = "names";
    private readonly SqliteConnection _connection;
    private readonly Vault _vault;
    private readonly byte[] _key;

    /// <summary>Opens the store, creating it with a new random key where absent. Deleted rows are overwritten on disk.</summary>
    public IdentityStore(StudyFolder folder)
    {
        _connection = SqliteFile.Open(folder.Identities, "identities/", "PRAGMA secure_delete = ON;");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Identities, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        _connection.Execute("INSERT INTO study_key (only, key) VALUES (1, @key) ON CONFLICT DO NOTHING", new { key = RandomNumberGenerator.GetBytes(KeyBytes) });
        _key = _connection.ExecuteScalar<byte[]>("SELECT key FROM study_key")!;
        _vault = new Vault(_connection);
        HashOlderAliases();
    }

    /// <summary>Whether names can be read.</summary>
    public VaultState Vault => _vault.State;

    /// <summary>The keys of encrypted originals; null where the study has no vault.</summary>
    public OriginalKeys? OriginalKeys => _vault.Originals();

    /// <summary>Words of the longest alias.</summary>
    public int MostWords => (int)_connection.ExecuteScalar<long>("SELECT coalesce(max(words), 0) FROM alias_hashes");

    /// <summary>The participant an alias stands for; null when nobody's. Case, outer and repeated blanks, and the spelling of accents do not matter.</summary>
    public ParticipantId? Resolve(string alias) =>
        _connection.QuerySingleOrDefault<string>("SELECT participant FROM alias_hashes WHERE hash = @hash", new { hash = AliasHash(alias) })
            is { } code ? new ParticipantId(code) : null;

    /// <summary>Whether an alias or a pseudonym was that of a person who was erased.</summary>
    public bool IsErased(string alias) => _connection.ExecuteScalar<long>("SELECT count(*) FROM erased WHERE hash = @hash", new { hash = AliasHash(alias) }) > 0;

    /// <summary>Gives a participant one more alias. The same alias again changes nothing. While the vault is locked its hash alone is stored.</summary>
    /// <returns>The participant; or the problem <c>alias-taken</c>, <c>alias-empty</c> or <c>person-erased</c>.</returns>
    public Outcome<ParticipantId> Add(ParticipantId participant, string alias)
    {
        var normalized = AliasText.Normalize(alias);
        if (normalized.Length == 0)
            return new Problem("alias-empty", new Place("identities.db"), "an empty alias", "the name or number that exports use", "Give the text as it stands in the file.");
        if (IsErased(alias))
        {
            return new Problem("person-erased", new Place("identities.db"), "an alias of a person who was erased", "an alias of a player",
                "Nothing of an erased person may come back. If somebody else has that name now, use an alias that tells the two apart.");
        }

        using var transaction = _connection.BeginTransaction(deferred: false);
        Store(participant.ToString(), alias, transaction);
        transaction.Commit();
        var owner = Resolve(alias)!.Value;
        return owner == participant
            ? owner
            : new Problem("alias-taken", new Place("identities.db"), $"an alias of {owner}", $"an alias that only {participant} has",
                $"Check who is meant: each alias belongs to one participant, and this one is {owner}'s.");
    }

    /// <summary>Aliases of a participant as they were given, in order; those that cannot be read while the vault is locked are left out.</summary>
    public IReadOnlyList<string> Aliases(ParticipantId participant)
    {
        var code = participant.ToString();
        return [.. _connection.Query<(string Hash, string? Alias, byte[]? Sealed)>("SELECT hash, alias, sealed FROM alias_hashes WHERE participant = @code", new { code })
            .Select(row => row.Alias ?? (row.Sealed is { } text ? _vault.Open(code, row.Hash, text) : null)).OfType<string>().Order(StringComparer.Ordinal)];
    }

    /// <summary>How many aliases a participant has, readable or not.</summary>
    public int AliasCount(ParticipantId participant) =>
        (int)_connection.ExecuteScalar<long>("SELECT count(*) FROM alias_hashes WHERE participant = @code", new { code = participant.ToString() });

    /// <summary>What stands in tables instead of an alias: HMAC-SHA256 under the study's key, 64 hexadecimal digits. Equal aliases have equal
    /// hashes in one study, and different ones in every other.</summary>
    public string AliasHash(string alias) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(_key, Encoding.UTF8.GetBytes(AliasText.Normalize(alias))));

    /// <summary>Stores name and contact of a participant.</summary>
    /// <returns>Null; or the problem <c>vault-locked</c>.</returns>
    public Problem? SetNames(ParticipantId participant, PersonNames names)
    {
        if (Vault == VaultState.Locked)
            return VaultMessages.Locked;
        using var transaction = _connection.BeginTransaction(deferred: false);
        Store(participant.ToString(), names, transaction);
        transaction.Commit();
        return null;
    }

    /// <summary>Name and contact of a participant.</summary>
    public PersonNames Names(ParticipantId participant)
    {
        var code = participant.ToString();
        var row = _connection.QuerySingleOrDefault<(string? Name, string? Contact, byte[]? Sealed)>("SELECT name, contact, sealed FROM people WHERE participant = @code", new { code });
        return row.Sealed is { } text
            ? _vault.Open(code, NamesPurpose, text) is { } json ? JsonSerializer.Deserialize<PersonNames>(json)! : new PersonNames(null, null)
            : new PersonNames(row.Name, row.Contact);
    }

    /// <summary>Makes the vault: names, contacts and aliases are encrypted from now on, and no longer stand in the file in clear.</summary>
    public Problem? CreateVault(string passphrase)
    {
        var clear = Readable();
        if (Transact(transaction => _vault.Create(passphrase, transaction) ?? SealAll(clear, transaction)) is { } problem)
            return problem;
        Compact();
        return null;
    }

    /// <summary>Opens the vault for this process.</summary>
    /// <returns>Null; or the problem <c>vault-off</c> or <c>vault-not-opened</c>.</returns>
    public Problem? Unlock(string passphrase)
    {
        if (_vault.Open(passphrase) is { } problem)
            return problem;
        _vault.StoreNewOriginalsKey(null);
        return null;
    }

    /// <summary>Gives the open vault another passphrase.</summary>
    public Problem? ChangePassphrase(string passphrase) => Transact(transaction => _vault.Change(passphrase, transaction));

    /// <summary>Takes new keys for the vault and for each person, and encrypts everything anew.</summary>
    /// <param name="passphrase">The passphrase, which opened the vault and stays.</param>
    public Problem? RotateKeys(string passphrase)
    {
        if (Vault != VaultState.Open)
            return VaultMessages.Locked;
        var clear = Readable();
        var problem = Transact(transaction =>
        {
            _vault.Rotate(passphrase, transaction);
            foreach (var person in clear.Select(row => row.Person).Distinct(StringComparer.Ordinal))
                _vault.Renew(person, transaction);
            return SealAll(clear, transaction);
        });
        Compact();
        return problem;
    }

    /// <summary>Writes a copy of the whole store, as encrypted as it is, which only its owner may read.</summary>
    /// <returns>Null; or the problem <c>file-exists</c>.</returns>
    public Problem? Backup(string file) => VaultBackup.Write(_connection, file);

    /// <summary>Brings back the vault of a backup of this study; whoever was erased since stays erased.</summary>
    /// <returns>Null; or the problem <c>vault-backup-unreadable</c>, <c>vault-off</c> or <c>vault-not-opened</c>.</returns>
    public Problem? Restore(string file, string passphrase) =>
        VaultBackup.Restore(_connection, file, passphrase, _key, IsErased) ?? Unlock(passphrase);

    /// <summary>Forgets a participant: aliases, name, contact and key. Of each alias and of the pseudonym a keyed hash stays, so that nothing of
    /// the person is taken in again.</summary>
    public void Forget(ParticipantId participant)
    {
        var code = participant.ToString();
        Transact(transaction =>
        {
            _connection.Execute(
                """
                INSERT INTO erased (hash) SELECT hash FROM alias_hashes WHERE participant = @code UNION SELECT @own ON CONFLICT DO NOTHING;
                DELETE FROM alias_hashes WHERE participant = @code;
                DELETE FROM people WHERE participant = @code;
                DELETE FROM vault_keys WHERE participant = @code;
                """, new { code, own = AliasHash(code) }, transaction);
            return null;
        });
        Compact();
    }

    /// <summary>Writes the file anew without free pages, and empties the write-ahead log.</summary>
    public void Compact() => SqliteFile.Compact(_connection);

    /// <inheritdoc/>
    public void Dispose() => _connection.Dispose();

    private void Store(string person, string alias, SqliteTransaction transaction)
    {
        var hash = AliasHash(alias);
        var words = AliasText.Normalize(alias).Split(' ').Length;
        var isClear = Vault == VaultState.Off;
        var sealedText = isClear ? null : _vault.Seal(person, hash, alias, transaction);
        _connection.Execute(
            "INSERT INTO alias_hashes (hash, participant, words, alias, sealed) VALUES (@hash, @person, @words, @clear, @sealedText) ON CONFLICT DO NOTHING",
            new { hash, person, words, clear = isClear ? alias : null, sealedText }, transaction);
    }

    private void Store(string person, PersonNames names, SqliteTransaction transaction)
    {
        var isClear = Vault == VaultState.Off;
        _connection.Execute(
            """
            INSERT INTO people (participant, name, contact, sealed) VALUES (@person, @name, @contact, @sealedText)
            ON CONFLICT (participant) DO UPDATE SET name = excluded.name, contact = excluded.contact, sealed = excluded.sealed
            """,
            new
            {
                person,
                name = isClear ? names.Name : null,
                contact = isClear ? names.Contact : null,
                sealedText = isClear ? null : _vault.Seal(person, NamesPurpose, JsonSerializer.Serialize(names), transaction),
            }, transaction);
    }

    private List<(string Person, IReadOnlyList<string> Aliases, PersonNames? Names)> Readable() =>
        [.. _connection.Query<string>("SELECT participant FROM alias_hashes UNION SELECT participant FROM people ORDER BY 1").Select(person =>
            (person, Aliases(new ParticipantId(person)),
            _connection.ExecuteScalar<long>("SELECT count(*) FROM people WHERE participant = @person", new { person }) > 0 ? Names(new ParticipantId(person)) : null))];

    private Problem? SealAll(List<(string Person, IReadOnlyList<string> Aliases, PersonNames? Names)> clear, SqliteTransaction transaction)
    {
        foreach (var (person, aliases, names) in clear)
        {
            foreach (var alias in aliases)
            {
                var hash = AliasHash(alias);
                _connection.Execute("UPDATE alias_hashes SET alias = NULL, sealed = @text WHERE hash = @hash", new { hash, text = _vault.Seal(person, hash, alias, transaction) }, transaction);
            }

            if (names is not null)
                Store(person, names, transaction);
        }

        return null;
    }

    private Problem? Transact(Func<SqliteTransaction, Problem?> act)
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        var problem = act(transaction);
        if (problem is null)
            transaction.Commit();
        return problem;
    }

    /// <summary>Stores that hold aliases by their text alone, as they were written before there were hashes.</summary>
    private void HashOlderAliases()
    {
        var older = _connection.Query<(string Alias, string Participant)>("SELECT alias, participant FROM aliases").ToList();
        if (older.Count == 0)
            return;
        Transact(transaction =>
        {
            foreach (var (alias, participant) in older)
                Store(participant, alias, transaction);
            _connection.Execute("DELETE FROM aliases", transaction: transaction);
            return null;
        });
    }
}
