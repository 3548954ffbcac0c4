using System.Globalization;
using System.Text.Json;
using System.Security.Cryptography;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Audit;

/// <summary>Recomputes what can be recomputed: hashes of originals and table files, the ledger's chain, the accounting of every file.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
/// <param name="originals">Its originals.</param>
public sealed class StudyVerification(StudySetup setup, StudyRegistry registry, OriginalStore originals)
{
    private const int NameHashDigits = 16;
    private readonly TableStore _tables = new(setup.Folder);

    /// <summary>All checks, one after the other, as they are done.</summary>
    public IEnumerable<AuditCheck> Run()
    {
        yield return Originals();
        foreach (var name in _tables.Names())
            yield return Table(_tables.Existing(name)!);
        yield return Ledger();
        yield return new ProtocolVerification(setup, registry).Run();
        yield return new ErasureCheck(registry, originals).Run();
        yield return Accounting();
        yield return StoredRows();
    }

    private AuditCheck Originals()
    {
        var stored = originals.All().ToHashSet();
        var problems = stored.SelectMany(hash => originals.Verify(hash).Problems).ToList();
        var locked = problems.RemoveAll(problem => problem.Code == OriginalMessages.LockedCode);
        foreach (var file in registry.IntakeFiles().Where(file => registry.StoredHash(file.Hash) is { } hash && !stored.Contains(hash)))
        {
            problems.Add(new Problem("original-missing", new Place(file.InboxPath), $"the bytes with hash {file.Hash.Short} are gone", "every file that came in, stored",
                "Bring the folder originals/ back from a backup; nothing else can replace them."));
        }

        return new AuditCheck("originals", stored.Count - locked, "originals, hash recomputed", problems)
        {
            Remarks = locked == 0 ? [] : [string.Create(CultureInfo.InvariantCulture, $"{locked} encrypted originals were not examined: the vault is locked. Give its passphrase to have them examined.")],
        };
    }

    /// <summary>The newest version's files must be there; files of older versions may have been vacuumed, and are checked where they still are.</summary>
    private static AuditCheck Table(DeltaTable table)
    {
        var newest = table.Files();
        var active = newest.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        var older = table.History().SelectMany(version => version.Added).DistinctBy(file => file.Path)
            .Where(file => !active.Contains(file.Path) && File.Exists(table.FullPath(file)));
        List<DataFile> examined = [.. newest, .. older];
        return new AuditCheck($"table {table.Definition.Name}", examined.Count, "Parquet files of all versions, size and hash recomputed",
            [.. examined.Select(file => Broken(table, file)).OfType<Problem>()]);
    }

    private static Problem? Broken(DeltaTable table, DataFile file)
    {
        var path = table.FullPath(file);
        var place = new Place(Path.Combine("tables", table.Definition.Name, file.Path));
        const string mend = "Bring the file back from a backup, or remove the table's folder and run 'swingstudy run' to compute it anew.";
        if (!File.Exists(path))
            return new Problem("table-file-missing", place, "the file is gone", "every file of a version", mend);
        using var stream = File.OpenRead(path);
        if (stream.Length != file.Size)
            return new Problem("table-file-size", place, string.Create(CultureInfo.InvariantCulture, $"{stream.Length} bytes"), string.Create(CultureInfo.InvariantCulture, $"{file.Size} bytes"), mend);
        var name = Path.GetFileNameWithoutExtension(path);
        var hash = Convert.ToHexStringLower(SHA256.HashData(stream));
        return name.EndsWith(hash[..NameHashDigits], StringComparison.Ordinal)
            ? null
            : new Problem("table-file-changed", place, $"bytes with hash {hash[..NameHashDigits]}", $"the hash in its name, {name[^Math.Min(NameHashDigits, name.Length)..]}", mend);
    }

    private AuditCheck Ledger()
    {
        var problems = registry.Ledger.Verify() is { } broken
            ? new List<Problem>
            {
                new("ledger-broken", new Place("study.db, ledger", checked((int)broken.Number)), broken.Reason, "a chain in which each entry holds the hash of the one before",
                    "Somebody changed the ledger by other means than this program; compare with a backup or with the hash in a release."),
            }
            : [];
        problems.AddRange(registry.Ledger.BrokenSeals().Select(hash => new Problem("ledger-text-changed", new Place("study.db, sealed_texts"), $"the text of {hash[..12]} does not have that keyed hash",
            "the text that the ledger sealed", "Somebody changed it by other means than this program; compare with a backup.")));
        return new AuditCheck("ledger", registry.Ledger.Last()?.Number ?? 0, "ledger entries, chain recomputed", problems);
    }

    private AuditCheck Accounting()
    {
        var files = registry.IntakeFiles(IntakeStatus.Taken);
        var problems = files.Where(file => file.LinesRead != file.RowsTaken + file.RowsRejected + file.LinesNotData)
            .Select(file => new Problem("accounting-unbalanced", new Place(file.InboxPath),
                string.Create(CultureInfo.InvariantCulture, $"{file.LinesRead} lines read, {file.RowsTaken} taken, {file.RowsRejected} rejected, {file.LinesNotData} not data"),
                "lines read = taken + rejected + not data", "The registry was changed by other means than this program; compare with a backup."));
        return new AuditCheck("accounting", files.Count, "files, lines read = taken + rejected + not data", [.. problems]);
    }

    /// <summary>What the registry says of each file against the rows that the tables hold.</summary>
    private AuditCheck StoredRows()
    {
        var captures = CountByOriginal(_tables.Table(StudyTables.Captures(setup.Dictionary)), null);
        var rejects = CountByOriginal(_tables.Table(StudyTables.Rejects), "row");
        var rowSources = setup.Mappings.Where(mapping => mapping.Rows != RowMeaning.Sessions).Select(mapping => mapping.Source).ToHashSet(StringComparer.Ordinal);
        var recorders = setup.Mappings.Where(mapping => mapping.Rows == RowMeaning.Recordings).Select(mapping => mapping.Source).ToHashSet(StringComparer.Ordinal);
        var files = registry.IntakeFiles(IntakeStatus.Taken);
        var problems = new List<Problem>();
        foreach (var file in files)
        {
            if (file.Source is { } source && rowSources.Contains(source))
                Compare(file, "captures", recorders.Contains(source) ? Recordings(file) : file.RowsTaken, captures.GetValueOrDefault(file.Hash));
            Compare(file, "rejects", file.RowsRejected, rejects.GetValueOrDefault(file.Hash));
        }

        return new AuditCheck("stored-rows", files.Count, "files, rows in tables counted again", problems);

        void Compare(IntakeFile file, string table, long expected, long found)
        {
            if (expected != found)
            {
                problems.Add(new Problem("rows-differ", new Place(file.InboxPath), string.Create(CultureInfo.InvariantCulture, $"{found} rows in {table}"),
                    string.Create(CultureInfo.InvariantCulture, $"{expected} rows, as the registry says"), "Run 'swingstudy ingest' once more: it finishes what was cut short."));
            }
        }
    }

    /// <summary>Recordings of a file: its lines are samples, of which a recording has many.</summary>
    private static long Recordings(IntakeFile file)
    {
        using var details = JsonDocument.Parse(file.Details ?? "{}");
        return details.RootElement.TryGetProperty("recordings", out var recordings) ? recordings.GetInt64() : 0;
    }

    private static Dictionary<Sha256, long> CountByOriginal(DeltaTable table, string? extent)
    {
        var counts = new Dictionary<Sha256, long>();
        if (table.CurrentVersion < 0)
            return counts;
        string[] columns = extent is null ? ["original_sha256"] : ["original_sha256", "extent"];
        foreach (var rows in table.Read(columns: columns))
        {
            var originals = rows.Texts("original_sha256");
            var extents = extent is null ? null : rows.Texts("extent");
            for (var row = 0; row < rows.Count; row++)
            {
                if (extents is null || extents[row] == extent)
                {
                    var hash = new Sha256(originals[row]!);
                    counts[hash] = counts.GetValueOrDefault(hash) + 1;
                }
            }
        }

        return counts;
    }
}
