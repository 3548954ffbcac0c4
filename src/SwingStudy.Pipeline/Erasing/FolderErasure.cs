using System.Text;
using System.Text.Json;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Redaction;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>Takes a person out of all other files of the study folder: reports, logs, releases, exports, the inbox.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="person">The person.</param>
internal sealed class FolderErasure(StudySetup setup, PersonTexts person)
{
    private const string ReleaseFile = "release.json";
    private const string ExportMark = "datapackage.json";
    private const string Notice = "no-longer-reproducible.json";
    private readonly StudyFolder _folder = setup.Folder;

    /// <summary>Goes through the folder; each step can be done again.</summary>
    public void Clear(ErasureReport report)
    {
        // Reports show all players beside each other; 'report' writes them anew from what is left.
        foreach (var file in Files(_folder.Reports))
            Delete(file, report);
        foreach (var file in Files(_folder.Logs))
            Shorten(file, report);
        ClearReleases(report);
        ClearInbox(report);
        ClearOthers(report);
    }

    /// <summary>Names of the study's releases.</summary>
    public IReadOnlyList<string> ReleaseNames => !Directory.Exists(_folder.Releases) ? []
        : [.. Directory.GetDirectories(_folder.Releases).Order(StringComparer.Ordinal).Select(folder => Path.GetFileName(folder))];

    /// <summary>Files that <see cref="Clear"/> would delete or shorten, but those of tables, relative to the study. Compressed ones of exports count as a whole.</summary>
    public IReadOnlyList<string> Forecast() => [.. Files(_folder.Reports)
        .Concat(Files(_folder.Releases).Where(file => Path.GetFileName(file) is not (ReleaseFile or Notice)))
        .Concat(Files(_folder.Root).Where(file => !IsBelow(file, _folder.Originals) && !IsBelow(file, _folder.Tables) && !IsDatabase(file) && (IsInExport(file) || person.IsNamedIn(Relative(file)) || IsNamedInside(file))))
        .Distinct(StringComparer.Ordinal).Select(Shown).Order(StringComparer.Ordinal)];

    /// <summary>Files in which the person still stands. Compressed pages are left out, in which a short pseudonym occurs by chance: their rows were looked at.</summary>
    public IEnumerable<string> Remains() => Files(_folder.Root)
        .Where(file => !IsBelow(file, _folder.Originals) && !IsDatabase(file) && !(IsBelow(file, _folder.Tables) && Path.GetExtension(file) == ".parquet"))
        .Where(file => person.IsNamedIn(Relative(file)) || IsNamedInside(file)).Select(Relative);

    private void ClearReleases(ErasureReport report)
    {
        foreach (var name in ReleaseNames)
        {
            var release = Path.Combine(_folder.Releases, name);
            foreach (var file in Files(release).Where(file => Path.GetFileName(file) is not (ReleaseFile or Notice)))
                Delete(file, report);
            report.Releases.Add(name);
            File.WriteAllText(Path.Combine(release, Notice), JsonSerializer.Serialize(new
            {
                release = name,
                erasure = report.Id,
                why = "A person was erased: the table versions that this release names are gone, and so are its results. Copies that were handed out are not reached by this.",
            }));
            var described = Path.Combine(release, ReleaseFile);
            if (File.Exists(described) && FileRedaction.Names(File.ReadAllBytes(described), person))
                File.WriteAllText(described, person.Without(File.ReadAllText(described)));
        }
    }

    private void ClearInbox(ErasureReport report)
    {
        foreach (var file in Files(_folder.Inbox))
        {
            var name = Path.GetRelativePath(_folder.Inbox, file).Replace(Path.DirectorySeparatorChar, '/');
            var content = File.ReadAllBytes(file);
            var mapping = setup.Mappings.FirstOrDefault(known => name.StartsWith(known.Source + "/", StringComparison.Ordinal));
            var cut = mapping is not null && !person.IsNamedIn(name) ? FileRedaction.Cut(content, name, mapping, person, new HashSet<int>())
                : new RedactedFile(FileRedaction.Names(content, person) || person.IsNamedIn(name) ? RedactionKind.Whole : RedactionKind.Untouched, null, new HashSet<int>());
            if (cut.Kind == RedactionKind.Whole)
                Delete(file, report);
            else if (cut.Kind == RedactionKind.Cut)
                Replace(file, cut.Content!, report);
        }
    }

    /// <summary>Exports within the folder go as a whole; any other file that names the person and is no declaration goes too.</summary>
    private void ClearOthers(ErasureReport report)
    {
        string[] own = [_folder.Tables, _folder.Originals, _folder.Inbox, _folder.Sources, _folder.Reports, _folder.Logs, _folder.Releases, Path.Combine(_folder.Root, setup.Declaration.Dictionary)];
        string[] files = [_folder.StudyFile, _folder.ProtocolFile];
        // The mark of an export goes last: what was cut short is then still known for one.
        foreach (var file in Files(_folder.Root).OrderBy(file => Path.GetFileName(file) == ExportMark))
        {
            if (own.Any(folder => IsBelow(file, folder)) || files.Contains(file) || IsDatabase(file))
                continue;
            var isExport = IsInExport(file);
            if (isExport || person.IsNamedIn(Relative(file)) || IsNamedInside(file))
                Delete(file, report);
            if (isExport)
                DeleteEmpty(Path.GetDirectoryName(file)!);
        }
    }

    private bool IsInExport(string file)
    {
        for (var folder = Path.GetDirectoryName(file)!; folder.Length > _folder.Root.Length; folder = Path.GetDirectoryName(folder)!)
        {
            if (File.Exists(Path.Combine(folder, ExportMark)))
                return true;
        }

        return false;
    }

    private void Shorten(string file, ErasureReport report)
    {
        var text = Encoding.UTF8.GetString(ReadShared(file));
        var lines = text.Split('\n');
        string[] kept = [.. lines.Where(line => !FileRedaction.Names(Encoding.UTF8.GetBytes(line), person))];
        if (kept.Length < lines.Length)
            Replace(file, Encoding.UTF8.GetBytes(string.Join('\n', kept)), report);
    }

    private void Delete(string file, ErasureReport report)
    {
        File.Delete(file);
        report.Files.Add(Shown(file));
    }

    private void DeleteEmpty(string folder)
    {
        for (; folder.Length > _folder.Root.Length && Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any(); folder = Path.GetDirectoryName(folder)!)
            Directory.Delete(folder);
    }

    private void Replace(string file, byte[] content, ErasureReport report)
    {
        var temporary = file + ".part";
        File.WriteAllBytes(temporary, content);
        File.Move(temporary, file, overwrite: true);
        report.Files.Add(Shown(file));
    }

    private string Shown(string file) => person.Without(Relative(file));

    private string Relative(string file) => Path.GetRelativePath(_folder.Root, file).Replace(Path.DirectorySeparatorChar, '/');

    private bool IsDatabase(string file) => file.StartsWith(_folder.Registry, StringComparison.Ordinal) || file.StartsWith(_folder.Identities, StringComparison.Ordinal)
        || Path.GetFileName(file).StartsWith(".writer.", StringComparison.Ordinal);

    private static bool IsBelow(string file, string folder) => file.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private bool IsNamedInside(string file)
    {
        using var stream = OpenShared(file);
        return FileRedaction.Names(stream, person);
    }

    private static FileStream OpenShared(string file) => new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    private static byte[] ReadShared(string file)
    {
        using var stream = OpenShared(file);
        var content = new byte[stream.Length];
        stream.ReadExactly(content);
        return content;
    }

    private static List<string> Files(string folder) =>
        Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)] : [];
}
