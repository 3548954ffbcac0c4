using System.Security.Cryptography;
using NodaTime;
using SwingStudy.Domain.Codebooks;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Export;

/// <summary>Writes table versions for other programs: CSV, Parquet, Arrow, a data package and a crate that describe them, a codebook, and programs that load them.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
public sealed class StudyExport(StudySetup setup, StudyRegistry registry)
{
    private readonly TableStore _tables = new(setup.Folder);

    /// <summary>The newest version of each table.</summary>
    public IReadOnlyDictionary<string, long> NewestVersions() =>
        _tables.Names().ToDictionary(name => name, name => _tables.Existing(name)!.CurrentVersion, StringComparer.Ordinal);

    /// <summary>Writes the export.</summary>
    /// <param name="request">What and where to.</param>
    /// <param name="created">The moment told in <c>datapackage.json</c>.</param>
    /// <param name="progress">Told the name of each table before it is written.</param>
    /// <returns>What was written, or the problem with the folder.</returns>
    public Outcome<IReadOnlyList<ExportedTable>> Write(ExportRequest request, Instant created, Action<string>? progress = null)
    {
        if (Directory.Exists(request.Folder) && Directory.EnumerateFileSystemEntries(request.Folder).Any())
        {
            return new Problem("folder-not-empty", new Place(request.Folder), "the folder is not empty", "a new or empty folder",
                "Choose another folder: an export never mixes with older files.");
        }

        Directory.CreateDirectory(request.Folder);
        var written = new List<ExportedTable>();
        foreach (var (name, version) in request.Versions.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            progress?.Invoke(name);
            var table = _tables.Existing(name)!;
            written.Add(Write(request, table.DefinitionAt(version), version, table.Read(version)));
        }

        progress?.Invoke(SessionTable.Definition.Name);
        written.Add(Write(request, SessionTable.Definition, null, [SessionTable.Rows(registry.Sessions())]));
        Describe(request, created, written);
        return Outcome<IReadOnlyList<ExportedTable>>.Of(written);
    }

    private static ExportedTable Write(ExportRequest request, TableDefinition definition, long? version, IEnumerable<RowSet> rows)
    {
        var count = 0L;
        var sinks = request.Formats.Select(format => Sink.Open(request.Folder, format, definition)).ToList();
        try
        {
            foreach (var part in rows.Select(part => request.Mask?.Apply(part) ?? part))
            {
                count += part.Count;
                foreach (var sink in sinks)
                    sink.Append(part);
            }
        }
        finally
        {
            foreach (var sink in sinks)
                sink.Writer.Dispose();
        }

        return new ExportedTable(definition, version, count, [.. sinks.Select(sink => sink.Written(request.Folder))]);
    }

    private void Describe(ExportRequest request, Instant created, List<ExportedTable> written)
    {
        var folder = request.Folder;
        var name = string.Concat(request.Title.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')).Trim('-');
        File.WriteAllText(Path.Combine(folder, "datapackage.json"), DataPackage.Describe(name.Length > 0 ? name : "study", request.Title, created, setup.Dictionary, written));
        File.WriteAllText(Path.Combine(folder, "codebook.md"), MarkdownCodebook.Write(setup.Dictionary));
        List<(string, string)> documents = [("datapackage.json", "Types, units and limits of every column, as a Frictionless Data Package."), ("codebook.md", "What every variable means.")];
        if (request.Formats.Contains("csv"))
        {
            File.WriteAllText(Path.Combine(folder, "load.R"), LoadScripts.ForR(written));
            File.WriteAllText(Path.Combine(folder, "load.py"), LoadScripts.ForPython(written));
            documents.AddRange([("load.R", "Loads the tables in R."), ("load.py", "Loads the tables in Python.")]);
        }

        File.WriteAllText(Path.Combine(folder, ResearchCrate.FileName),
            ResearchCrate.Describe(request.Title, setup.Protocol.Question, setup.Declaration.License, created, written, documents));
    }

    /// <summary>One file being written.</summary>
    private sealed record Sink(string Path, string Format, IDisposable Writer, Action<RowSet> Append)
    {
        public static Sink Open(string folder, string format, TableDefinition table)
        {
            var path = $"{format}/{table.Name}.{format}";
            var full = System.IO.Path.Combine(folder, path);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
            switch (format)
            {
                case "csv":
                    var csv = new CsvTableWriter(full, table);
                    return new Sink(path, format, csv, csv.Append);
                case "parquet":
                    var parquet = new ParquetTableWriter(full, table);
                    return new Sink(path, format, parquet, parquet.Append);
                case "arrow":
                    var arrow = new ArrowTableWriter(full, table);
                    return new Sink(path, format, arrow, arrow.Append);
                default:
                    throw new ArgumentOutOfRangeException(nameof(format), format, "Unknown format.");
            }
        }

        public ExportedFile Written(string folder)
        {
            using var stream = File.OpenRead(System.IO.Path.Combine(folder, Path));
            return new ExportedFile(Path, Format, stream.Length, new Sha256(Convert.ToHexStringLower(SHA256.HashData(stream))));
        }
    }
}
