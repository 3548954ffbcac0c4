using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;

namespace SwingStudy.Storage.Files;

/// <summary>One SQLite file: write-ahead log, every commit flushed, migrations from embedded SQL.</summary>
internal static class SqliteFile
{
    private const int BusyTimeoutMillis = 10_000;

    /// <summary>Opens the file, creates it where absent, and brings its layout up to date.</summary>
    /// <param name="path">The file.</param>
    /// <param name="migrations">Prefix of the embedded migrations: <c>registry/</c>.</param>
    /// <param name="pragmas">Settings beyond the usual ones.</param>
    /// <exception cref="InvalidDataException">The file was written by a newer version of the program.</exception>
    internal static SqliteConnection Open(string path, string migrations, string pragmas = "")
    {
        DurableFile.CreateFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, ForeignKeys = true }.ToString());
        try
        {
            connection.Open();
            connection.Execute(string.Create(CultureInfo.InvariantCulture,
                $"PRAGMA busy_timeout = {BusyTimeoutMillis}; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; {pragmas}"));
            Migrate(connection, path, migrations);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Writes the file anew without free pages and empties the write-ahead log: what was deleted is then nowhere in either.</summary>
    internal static void Compact(SqliteConnection connection) =>
        connection.Execute("PRAGMA wal_checkpoint(TRUNCATE); VACUUM; PRAGMA wal_checkpoint(TRUNCATE);");

    private static void Migrate(SqliteConnection connection, string path, string prefix)
    {
        var assembly = typeof(SqliteFile).Assembly;
        var scripts = assembly.GetManifestResourceNames().Where(name => name.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToList();
        if (connection.ExecuteScalar<long>("PRAGMA user_version") == scripts.Count)
            return;
        using var transaction = connection.BeginTransaction(deferred: false);
        var done = connection.ExecuteScalar<long>("PRAGMA user_version", transaction: transaction);
        if (done > scripts.Count)
            throw new InvalidDataException($"{path} has layout {done}, this program knows {scripts.Count}: use the newer version that wrote it.");
        foreach (var script in scripts.Skip((int)done))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(script)!);
            connection.Execute(reader.ReadToEnd(), transaction: transaction);
        }

        connection.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {scripts.Count}"), transaction: transaction);
        transaction.Commit();
    }
}
