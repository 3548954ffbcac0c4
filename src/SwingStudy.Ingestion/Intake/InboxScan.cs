using SwingStudy.Domain.Studies;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds the files of the inbox.</summary>
internal static class InboxScan
{
    /// <summary>All files, without hidden ones and what office programs put beside open files.</summary>
    public static IEnumerable<Candidate> Files(StudyFolder folder)
    {
        if (!Directory.Exists(folder.Inbox))
            yield break;
        foreach (var path in Below(folder.Inbox))
        {
            var name = Path.GetRelativePath(folder.Inbox, path).Replace(Path.DirectorySeparatorChar, '/');
            if (!name.Split('/').Any(IsHidden))
                yield return new Candidate(name, path, CandidatePlace.Inbox, new FileInfo(path) is { Exists: true } file ? file.Length : 0);
        }
    }

    /// <summary>
    /// A file that a person named, known by its name alone: folders of somebody's disk are nobody's business in a study, and often hold names. One that lies
    /// in the inbox counts as found there.
    /// </summary>
    public static Candidate Named(StudyFolder folder, string path)
    {
        var full = Path.GetFullPath(path);
        var inInbox = Path.GetRelativePath(folder.Inbox, full);
        var size = File.Exists(full) ? new FileInfo(full).Length : 0;
        return inInbox.StartsWith("..", StringComparison.Ordinal) || Path.IsPathRooted(inInbox)
            ? new Candidate(Path.GetFileName(Path.TrimEndingDirectorySeparator(full)), full, CandidatePlace.Named, size)
            : new Candidate(inInbox.Replace(Path.DirectorySeparatorChar, '/'), full, CandidatePlace.Inbox, size);
    }

    /// <summary>Whether the files of a folder can be listed.</summary>
    public static bool IsOpen(string folder) => Entries(folder) is not null;

    /// <summary>All files below a folder; a folder that may not be listed stands for what is in it, so that nothing is passed over in silence.</summary>
    private static IEnumerable<string> Below(string folder) => Entries(folder) is { } entries
        ? entries.SelectMany(entry => Directory.Exists(entry) ? Below(entry) : [entry])
        : [folder];

    private static string[]? Entries(string folder)
    {
        try
        {
            return Directory.GetFileSystemEntries(folder);
        }
        catch (UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static bool IsHidden(string name) => name.StartsWith('.') || name.StartsWith("~$", StringComparison.Ordinal);
}
