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
        var options = new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.System };
        foreach (var path in Directory.EnumerateFiles(folder.Inbox, "*", options))
        {
            var name = Path.GetRelativePath(folder.Inbox, path).Replace(Path.DirectorySeparatorChar, '/');
            if (!name.Split('/').Any(IsHidden))
                yield return new Candidate(name, path, CandidatePlace.Inbox, new FileInfo(path).Length);
        }
    }

    /// <summary>A file that a person named; one that lies in the inbox counts as found there.</summary>
    public static Candidate Named(StudyFolder folder, string path)
    {
        var full = Path.GetFullPath(path);
        var inInbox = Path.GetRelativePath(folder.Inbox, full);
        var size = File.Exists(full) ? new FileInfo(full).Length : 0;
        return inInbox.StartsWith("..", StringComparison.Ordinal) || Path.IsPathRooted(inInbox)
            ? new Candidate(path, full, CandidatePlace.Named, size)
            : new Candidate(inInbox.Replace(Path.DirectorySeparatorChar, '/'), full, CandidatePlace.Inbox, size);
    }

    private static bool IsHidden(string name) => name.StartsWith('.') || name.StartsWith("~$", StringComparison.Ordinal);
}
