using System.Security.Cryptography;
using Dapper;
using Microsoft.Data.Sqlite;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Originals;

namespace SwingStudy.Storage.Identities;

/// <summary>The keys of the vault: a passphrase opens the vault's key, which opens each person's key, which opens that person's texts. Another
/// passphrase wraps one key anew; erasing a person destroys one key.</summary>
internal sealed class Vault
{
    private const int SaltBytes = 16;
    private const int LeastCharacters = 12;
    private const string VaultPurpose = "swingstudy vault key";
    private const string OriginalsPurpose = "swingstudy key of originals";
    private readonly SqliteConnection _connection;
    private byte[]? _key;

    internal Vault(SqliteConnection connection) => _connection = connection;

    internal VaultState State => !Exists ? VaultState.Off : _key is null ? VaultState.Locked : VaultState.Open;

    private bool Exists => _connection.ExecuteScalar<long>("SELECT count(*) FROM vault") > 0;

    /// <summary>Makes the vault and opens it. The caller seals what stands in clear.</summary>
    internal Problem? Create(string passphrase, SqliteTransaction transaction)
    {
        if (Exists)
            return VaultMessages.Exists;
        if (passphrase.Length < LeastCharacters)
            return VaultMessages.TooShort;
        _key = RandomNumberGenerator.GetBytes(PassphraseKey.KeyBytes);
        Wrap(passphrase, transaction);
        StoreNewOriginalsKey(transaction);
        return null;
    }

    /// <summary>The keys of encrypted originals; null without a vault, and in a vault older than they are until it is opened.</summary>
    internal OriginalKeys? Originals(SqliteTransaction? transaction = null)
    {
        var row = _connection.QuerySingleOrDefault<(byte[]? Public, byte[]? Sealed)>("SELECT public_key, sealed FROM originals_key", transaction: transaction);
        if (row.Public is null)
            return null;
        if (_key is null)
            return new OriginalKeys(row.Public, null);
        return Cipher.TryOpen(_key, OriginalsPurpose, row.Sealed!, out var key)
            ? new OriginalKeys(row.Public, key)
            : throw new InvalidDataException("identities.db holds a key of originals that the vault did not write.");
    }

    /// <summary>Opens the vault for this process.</summary>
    internal Problem? Open(string passphrase)
    {
        if (!Exists)
            return VaultMessages.Off;
        var (salt, memory, passes, wrapped) = _connection.QuerySingle<(byte[] Salt, long Memory, long Passes, byte[] Wrapped)>(
            "SELECT salt, memory_kib, passes, wrapped_key FROM vault");
        var derived = new PassphraseKey((int)memory, (int)passes).Derive(passphrase, salt);
        var opens = Cipher.TryOpen(derived, VaultPurpose, wrapped, out var key);
        CryptographicOperations.ZeroMemory(derived);
        if (!opens)
            return VaultMessages.DoesNotOpen;
        _key = key;
        return null;
    }

    /// <summary>Wraps the vault's key under another passphrase.</summary>
    internal Problem? Change(string passphrase, SqliteTransaction transaction)
    {
        if (_key is null)
            return VaultMessages.Locked;
        if (passphrase.Length < LeastCharacters)
            return VaultMessages.TooShort;
        Wrap(passphrase, transaction);
        return null;
    }

    /// <summary>Takes a new vault key and wraps every person's key under it; a copy of the old vault's key opens nothing any more.</summary>
    internal void Rotate(string passphrase, SqliteTransaction transaction)
    {
        var originals = Originals(transaction);
        var people = _connection.Query<string>("SELECT participant FROM vault_keys", transaction: transaction).ToDictionary(person => person, person => KeyOf(person, transaction)!);
        _key = RandomNumberGenerator.GetBytes(PassphraseKey.KeyBytes);
        Wrap(passphrase, transaction);
        foreach (var (person, key) in people)
            Store(person, key, transaction);
        if (originals?.Private is { } pair)
            _connection.Execute("UPDATE originals_key SET sealed = @sealedKey", new { sealedKey = Cipher.Seal(_key, OriginalsPurpose, pair) }, transaction);
    }

    /// <summary>Makes the keys of originals where an open vault has none: it was made before originals were encrypted.</summary>
    internal void StoreNewOriginalsKey(SqliteTransaction? transaction)
    {
        if (_key is null || _connection.ExecuteScalar<long>("SELECT count(*) FROM originals_key", transaction: transaction) > 0)
            return;
        using var pair = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
        _connection.Execute(
            "INSERT INTO originals_key (only, public_key, sealed) VALUES (1, @publicKey, @sealedKey)",
            new { publicKey = pair.ExportSubjectPublicKeyInfo(), sealedKey = Cipher.Seal(_key, OriginalsPurpose, pair.ExportPkcs8PrivateKey()) }, transaction);
    }

    /// <summary>Takes a new key for a person; what was sealed under the old one must be sealed again.</summary>
    internal void Renew(string person, SqliteTransaction transaction) => Store(person, RandomNumberGenerator.GetBytes(PassphraseKey.KeyBytes), transaction);

    /// <summary>Seals a text of a person; null while the vault is locked.</summary>
    internal byte[]? Seal(string person, string what, string text, SqliteTransaction? transaction)
    {
        if (_key is null)
            return null;
        var key = KeyOf(person, transaction);
        if (key is null)
            Store(person, key = RandomNumberGenerator.GetBytes(PassphraseKey.KeyBytes), transaction);
        return Cipher.Seal(key, $"{person} {what}", System.Text.Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Opens a text of a person; null while the vault is locked.</summary>
    /// <exception cref="InvalidDataException">The text was changed by other means than this program.</exception>
    internal string? Open(string person, string what, byte[] sealedText)
    {
        if (_key is null || KeyOf(person, null) is not { } key)
            return null;
        return Cipher.TryOpen(key, $"{person} {what}", sealedText, out var plain)
            ? System.Text.Encoding.UTF8.GetString(plain)
            : throw new InvalidDataException($"identities.db holds a text of {person} that the vault did not write.");
    }

    private byte[]? KeyOf(string person, SqliteTransaction? transaction)
    {
        if (_connection.ExecuteScalar<byte[]>("SELECT wrapped_key FROM vault_keys WHERE participant = @person", new { person }, transaction) is not { } wrapped)
            return null;
        return Cipher.TryOpen(_key!, "key of " + person, wrapped, out var key)
            ? key
            : throw new InvalidDataException($"identities.db holds a key of {person} that the vault did not write.");
    }

    private void Store(string person, byte[] key, SqliteTransaction? transaction) => _connection.Execute(
        "INSERT INTO vault_keys (participant, wrapped_key) VALUES (@person, @wrapped) ON CONFLICT DO UPDATE SET wrapped_key = excluded.wrapped_key",
        new { person, wrapped = Cipher.Seal(_key!, "key of " + person, key) }, transaction);

    private void Wrap(string passphrase, SqliteTransaction transaction)
    {
        var salt = RandomNumberGenerator.GetBytes(SaltBytes);
        var derived = PassphraseKey.Usual.Derive(passphrase, salt);
        _connection.Execute(
            """
            INSERT INTO vault (only, salt, memory_kib, passes, wrapped_key) VALUES (1, @salt, @MemoryKib, @Passes, @wrapped)
            ON CONFLICT (only) DO UPDATE SET salt = excluded.salt, memory_kib = excluded.memory_kib, passes = excluded.passes, wrapped_key = excluded.wrapped_key
            """, new { salt, PassphraseKey.Usual.MemoryKib, PassphraseKey.Usual.Passes, wrapped = Cipher.Seal(derived, VaultPurpose, _key!) }, transaction);
        CryptographicOperations.ZeroMemory(derived);
    }
}
