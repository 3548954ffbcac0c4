using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Tells finished files from those that a program is still writing: a file that changed a moment ago is looked at twice.</summary>
internal sealed class SettledFiles(TimeProvider time, TimeSpan settling)
{
    /// <summary>Waits once until the youngest file is old enough, then tells what is wrong with each file that cannot be read yet; null: it is finished.</summary>
    public IReadOnlyDictionary<string, Problem?> Look(IReadOnlyList<Candidate> candidates)
    {
        var first = candidates.ToDictionary(candidate => candidate.Path, candidate => Seen(candidate.Path), StringComparer.Ordinal);
        var youngest = first.Values.OfType<Sight>().Select(sight => time.GetUtcNow() - sight.ChangedAt).Where(age => age > TimeSpan.Zero && age < settling).ToList();
        if (youngest.Count > 0)
            Task.Delay(settling - youngest.Min(), time).GetAwaiter().GetResult();
        else if (first.Values.OfType<Sight>().Any(sight => sight.ChangedAt > time.GetUtcNow()))
            Task.Delay(settling, time).GetAwaiter().GetResult();
        return candidates.ToDictionary(candidate => candidate.Path, candidate => Judge(candidate, first[candidate.Path]), StringComparer.Ordinal);
    }

    private static Problem? Judge(Candidate candidate, Sight? before)
    {
        if (Directory.Exists(candidate.Path))
            return InboxScan.IsOpen(candidate.Path) ? IntakeMessages.IsFolder(candidate.Name) : IntakeMessages.FolderClosed(candidate.Name);
        if (Seen(candidate.Path) is not { } now)
            return IntakeMessages.FileMissing(candidate.Name);
        if (before != now)
            return IntakeMessages.StillWritten(candidate.Name);
        return now.Size == 0 ? IntakeMessages.FileEmpty(candidate.Name) : null;
    }

    private static Sight? Seen(string path) => new FileInfo(path) is { Exists: true } file ? new Sight(file.Length, file.LastWriteTimeUtc) : null;

    private sealed record Sight(long Size, DateTimeOffset ChangedAt);
}
