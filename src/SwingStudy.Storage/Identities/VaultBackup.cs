using System.Security.Cryptography;
using Dapper;
using Microsoft.Data.Sqlite;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Storage.Identities;

/// <summary>Copies of the store of identities: written as encrypted as it is, and brought back without those who were erased since.</summary>
internal static class VaultBackup
{
    /// <summary>Writes a copy that only its owner may read.</summary>
    internal static Problem? Write(SqliteConnection store, string file)
    {
        if (File.Exists(file))
            return VaultMessages.FileExists(file);
        store.Execute("VACUUM INTO @file", new { file });
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        return null;
    }

    /// <summary>Takes vault, names and alias texts of a backup over. Aliases known since stay known by their hashes.</summary>
    /// <param name="store">The study's store.</param>
    /// <param name="file">The backup.</param>
    /// <param name="passphrase">The passphrase that the backup had.</param>
    /// <param name="studyKey">The study's key: a backup of another study has another.</param>
    /// <param name="isErased">Whether a pseudonym is that of a person who was erased since.</param>
    internal static Problem? Restore(SqliteConnection store, string file, string passphrase, byte[] studyKey, Func<string, bool> isErased)
    {
        if (Check(file, passphrase, studyKey, store.ExecuteScalar<byte[]>("SELECT public_key FROM originals_key")) is { } problem)
            return problem;
        store.Execute("ATTACH @file AS backup", new { file });
        try
        {
            var erased = store.Query<string>("SELECT participant FROM backup.alias_hashes UNION SELECT participant FROM backup.people").Where(isErased).ToList();
            using var transaction = store.BeginTransaction(deferred: false);
            store.Execute(
                """
                DELETE FROM vault; INSERT INTO vault SELECT * FROM backup.vault;
                DELETE FROM vault_keys; INSERT INTO vault_keys SELECT * FROM backup.vault_keys WHERE participant NOT IN @erased;
                DELETE FROM people;
                INSERT INTO people (participant, name, contact, sealed) SELECT participant, name, contact, sealed FROM backup.people WHERE participant NOT IN @erased;
                UPDATE alias_hashes SET alias = NULL, sealed = NULL;
                INSERT INTO alias_hashes (hash, participant, words, alias, sealed)
                SELECT hash, participant, words, alias, sealed FROM backup.alias_hashes WHERE participant NOT IN @erased AND hash NOT IN (SELECT hash FROM erased)
                ON CONFLICT (hash) DO UPDATE SET alias = excluded.alias, sealed = excluded.sealed WHERE alias_hashes.participant = excluded.participant;
                """, new { erased }, transaction);
            if (store.ExecuteScalar<long>(HasOriginalsKey("backup."), transaction: transaction) > 0)
                store.Execute("DELETE FROM originals_key; INSERT INTO originals_key SELECT * FROM backup.originals_key", transaction: transaction);
            transaction.Commit();
            return null;
        }
        finally
        {
            store.Execute("DETACH backup");
        }
    }

    private static string HasOriginalsKey(string schema) => $"SELECT count(*) FROM {schema}sqlite_master WHERE name = 'originals_key'";

    /// <summary>Whether the file is a backup of this study that the passphrase opens, and that holds the key of the originals as they are encrypted.</summary>
    private static Problem? Check(string file, string passphrase, byte[] studyKey, byte[]? originalsKey)
    {
        if (!File.Exists(file))
            return VaultMessages.NoBackup(file);
        using var backup = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
        try
        {
            backup.Open();
            if (!CryptographicOperations.FixedTimeEquals(backup.ExecuteScalar<byte[]>("SELECT key FROM study_key") ?? [], studyKey))
                return VaultMessages.NoBackup(file);
            if (originalsKey is not null && (backup.ExecuteScalar<long>(HasOriginalsKey("")) == 0
                || !originalsKey.AsSpan().SequenceEqual(backup.ExecuteScalar<byte[]>("SELECT public_key FROM originals_key"))))
                return VaultMessages.BackupWithoutOriginals(file);
            return new Vault(backup).Open(passphrase);
        }
        catch (SqliteException)
        {
            return VaultMessages.NoBackup(file);
        }
    }
}
