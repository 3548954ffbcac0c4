using System.Text;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Tests.Support;

/// <summary>A real study in a temporary folder.</summary>
internal sealed class TestStudy : IDisposable
{
    private readonly IReadOnlyList<SourceMapping> _mappings;
    private readonly int _threads;

    public TestStudy(params SourceMapping[] mappings)
        : this(2, mappings)
    {
    }

    private TestStudy(int threads, IReadOnlyList<SourceMapping> mappings, StudyFolder? folder = null)
    {
        _mappings = mappings;
        _threads = threads;
        Folder = folder ?? new StudyFolder(Directory.CreateTempSubdirectory("swingstudy-intake-").FullName);
        Registry = new StudyRegistry(Folder);
        Identities = new IdentityStore(Folder);
        Tables = new TableStore(Folder);
    }

    public StudyFolder Folder { get; }

    public StudyRegistry Registry { get; }

    public IdentityStore Identities { get; }

    public TableStore Tables { get; }

    public StudyIntake Intake => new(Context);

    public IntakeContext Context => new()
    {
        Folder = Folder,
        Zone = "Europe/Vienna",
        Dictionary = Some.Dictionary,
        Eligibility = new Eligibility(18, false, 18, []),
        Mappings = _mappings,
        Registry = Registry,
        Identities = Identities,
        Tables = Tables,
        Threads = _threads,
        Settling = TimeSpan.Zero,
    };

    public TestStudy With(string code, params string[] aliases)
    {
        var participant = new ParticipantId(code);
        Registry.Act("test", "people.add", act =>
        {
            var added = Instant.FromUtc(2026, 1, 1, 0, 0);
            act.Save(new Participant(participant, Participant.Enrolled, added));
            act.Add(new Consent(participant, ConsentScope.Research, true, ConsentSigner.Participant, added));
            return "{}";
        });
        foreach (var alias in aliases)
            Assert.True(Identities.Add(participant, alias).Succeeded(out _));
        return this;
    }

    /// <summary>The same study, with the same keys, in another folder.</summary>
    public TestStudy Copy(int threads)
    {
        var copy = new StudyFolder(Directory.CreateTempSubdirectory("swingstudy-intake-").FullName);
        foreach (var path in Directory.EnumerateFiles(Folder.Root, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy.Root, Path.GetRelativePath(Folder.Root, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.WriteAllBytes(target, ReadShared(path));
            File.SetLastWriteTimeUtc(target, File.GetLastWriteTimeUtc(path));
        }

        return new TestStudy(threads, _mappings, copy);
    }

    /// <summary>Puts a file into the inbox, last written an hour ago.</summary>
    public string Drop(string name, string text, Encoding? encoding = null)
    {
        var path = Path.Combine(Folder.Inbox, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text, encoding ?? new UTF8Encoding(false));
        File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddHours(-1));
        return path;
    }

    public IReadOnlyList<FileResult> Run(params string[] files)
    {
        var outcome = Intake.Run(files);
        Assert.True(outcome.Succeeded(out var report), string.Join(Environment.NewLine, outcome.Problems));
        Assert.All(report.Files.Where(file => file.Outcome == FileOutcome.Taken), file => Assert.True(file.Counts.Balances));
        return report.Files;
    }

    public FileResult RunOne(params string[] files) => Assert.Single(Run(files));

    public IReadOnlyList<string> InboxFiles() => Directory.Exists(Folder.Inbox) ? [.. Directory.EnumerateFiles(Folder.Inbox, "*", SearchOption.AllDirectories)] : [];

    /// <summary>All captures, as texts, in the order of time.</summary>
    public IReadOnlyList<string> Captures(params string[] columns) => Rows(StudyTables.Captures(Some.Dictionary), "recorded_at", columns);

    public IReadOnlyList<string> Rejects(params string[] columns) => Rows(StudyTables.Rejects, "original_row", columns);

    /// <summary>Paths of all active data files with the hash of their bytes.</summary>
    public IReadOnlyList<string> TableFiles()
    {
        var files = new List<string>();
        foreach (var definition in (TableDefinition[])[StudyTables.Captures(Some.Dictionary), StudyTables.Rejects])
        {
            var table = Tables.Table(definition);
            files.AddRange(table.Files().Select(file => $"{definition.Name}/{file.Path} {Sha256.Of(File.ReadAllBytes(table.FullPath(file)))}"));
        }

        return files;
    }

    /// <summary>Everything that identities, registry and tables hold, as bytes: to look for what must not stand there.</summary>
    public IEnumerable<string> FilesHolding(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        return Directory.EnumerateFiles(Folder.Root, "*", SearchOption.AllDirectories)
            .Where(path => !path.StartsWith(Folder.Originals, StringComparison.Ordinal) && !Path.GetFileName(path).StartsWith("identities.db", StringComparison.Ordinal))
            .Where(path => ReadShared(path).AsSpan().IndexOf(bytes) >= 0);
    }

    public void Dispose()
    {
        Registry.Dispose();
        Identities.Dispose();
        Directory.Delete(Folder.Root, recursive: true);
    }

    private static byte[] ReadShared(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private List<string> Rows(TableDefinition definition, string order, string[] columns) =>
    [
        .. Tables.Table(definition).Read()
            .SelectMany(set => Enumerable.Range(0, set.Count).Select(row => (Order: Shown(set[order], row), Text: string.Join("|", columns.Select(column => Shown(set[column], row))))))
            .OrderBy(row => row.Order.Length).ThenBy(row => row.Order, StringComparer.Ordinal).ThenBy(row => row.Text, StringComparer.Ordinal).Select(row => row.Text),
    ];

    private static string Shown(Column column, int row) => column.IsMissing(row) ? "" : column switch
    {
        TextColumn texts => texts.Values[row]!,
        NumberColumn numbers => Math.Round(numbers.Values[row], 6).ToString(System.Globalization.CultureInfo.InvariantCulture),
        IntegerColumn integers => integers.Values[row]!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture),
        BooleanColumn booleans => booleans.Values[row]!.Value ? "true" : "false",
        InstantColumn instants => instants.UnixMillis[row].ToString(System.Globalization.CultureInfo.InvariantCulture),
        _ => throw new InvalidOperationException("Not shown."),
    };
}
