using System.Data.Common;
using System.Globalization;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Registry;

/// <summary>The append-only, hash-chained record of every act: each entry's hash covers the entry before.</summary>
public sealed class Ledger
{
    private static readonly string NoEntry = new('0', 64);
    private readonly SqliteConnection _connection;
    private readonly LedgerSeals _seals;

    internal Ledger(SqliteConnection connection)
    {
        _connection = connection;
        _seals = new LedgerSeals(connection);
    }

    /// <summary>Entries in order, from <paramref name="from"/> on.</summary>
    public IReadOnlyList<LedgerEntry> Entries(long from = 1) =>
        StudyRegistry.Query(_connection, "SELECT * FROM ledger WHERE number >= @from ORDER BY number", new { from }, RegistryRows.Ledger);

    /// <summary>The newest entry; null when there is none.</summary>
    public LedgerEntry? Last() =>
        StudyRegistry.Query(_connection, "SELECT * FROM ledger ORDER BY number DESC LIMIT 1", null, RegistryRows.Ledger).SingleOrDefault();

    /// <summary>The details of an entry as people may read them: keyed hashes are replaced by their texts where the person is still in the study.</summary>
    public string Readable(LedgerEntry entry) => _seals.Open(entry.Details);

    /// <summary>Keyed hashes in the ledger whose text, which stands beside it, was changed by other means than this program.</summary>
    public IEnumerable<string> BrokenSeals() => _seals.Broken();

    /// <summary>Recomputes the chain.</summary>
    /// <returns>The first entry that does not hold; null when all do. Entries cut off at the end are found only by comparing the newest hash
    /// with one kept elsewhere, such as in a release.</returns>
    public LedgerBreak? Verify()
    {
        var (number, previous) = (0L, NoEntry);
        foreach (var entry in Entries())
        {
            number++;
            if (entry.Number != number)
                return new LedgerBreak(number, string.Create(CultureInfo.InvariantCulture, $"entry {number} is missing"));
            if (entry.Previous != previous)
                return new LedgerBreak(number, "it does not follow the entry before");
            if (entry.Hash != HashOf(entry))
                return new LedgerBreak(number, "its content does not have its hash");
            previous = entry.Hash;
        }

        return null;
    }

    internal LedgerEntry Append(DbTransaction transaction, Instant at, string actor, string act, string details)
    {
        var last = Last();
        var entry = new LedgerEntry((last?.Number ?? 0) + 1, at, actor, act, CanonicalJson.Of(_seals.Seal(transaction, details)), last?.Hash ?? NoEntry, "");
        entry = entry with { Hash = HashOf(entry) };
        _connection.Execute(
            "INSERT INTO ledger (number, at, actor, act, details, previous, hash) VALUES (@Number, @at, @Actor, @Act, @Details, @Previous, @Hash)",
            new { entry.Number, at = Row.Write(entry.At), entry.Actor, entry.Act, entry.Details, entry.Previous, entry.Hash }, transaction);
        return entry;
    }

    private static string HashOf(LedgerEntry entry)
    {
        using var details = JsonDocument.Parse(entry.Details);
        var content = JsonSerializer.Serialize(new
        {
            number = entry.Number,
            at = Row.Write(entry.At),
            actor = entry.Actor,
            act = entry.Act,
            details = details.RootElement,
            previous = entry.Previous,
        });
        return Sha256.Of(CanonicalJson.Of(content)).ToString();
    }
}
