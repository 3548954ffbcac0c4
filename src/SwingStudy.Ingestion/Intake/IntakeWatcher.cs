using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Takes files in as they arrive. The operating system tells of them at once where it can; looking from time to time finds those that it does not tell of
/// (network drives) and files that were not finished the last time.
/// </summary>
/// <param name="folder">The study.</param>
/// <param name="run">One intake; opens and closes the study, so that others can write between two of them.</param>
/// <param name="interval">Time between two looks.</param>
/// <param name="time">The clock.</param>
public sealed class IntakeWatcher(StudyFolder folder, Func<Outcome<IntakeReport>> run, TimeSpan interval, TimeProvider time)
{
    private HashSet<string> _seen = [];

    /// <summary>Watches until cancelled; first takes in what lies there already.</summary>
    /// <param name="report">Is told the result of each intake that had something to do.</param>
    /// <param name="cancellation">Ends the watch between two intakes, never within one.</param>
    public async Task WatchAsync(Action<Outcome<IntakeReport>> report, CancellationToken cancellation)
    {
        Directory.CreateDirectory(folder.Inbox);
        using var wake = new SemaphoreSlim(0);
        using var watcher = new FileSystemWatcher(folder.Inbox) { IncludeSubdirectories = true };
        watcher.Created += (_, _) => Wake(wake);
        watcher.Changed += (_, _) => Wake(wake);
        watcher.Renamed += (_, _) => Wake(wake);
        watcher.EnableRaisingEvents = true;
        while (!cancellation.IsCancellationRequested)
        {
            // What could not be read the last time is tried again when it has changed; what came during the run is new.
            var lies = Sight();
            if (!lies.IsSubsetOf(_seen))
                report(run());
            lies.IntersectWith(Sight());
            _seen = lies;
            await WaitAsync(wake, cancellation).ConfigureAwait(false);
        }
    }

    private static void Wake(SemaphoreSlim wake)
    {
        if (wake.CurrentCount == 0)
            wake.Release();
    }

    private async Task WaitAsync(SemaphoreSlim wake, CancellationToken cancellation)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var looks = Task.Delay(interval, time, either.Token);
        var told = wake.WaitAsync(either.Token);
        await Task.WhenAny(looks, told).ConfigureAwait(false);
        await either.CancelAsync().ConfigureAwait(false);
    }

    /// <summary>Name, size and time of all that lies in the inbox.</summary>
    private HashSet<string> Sight() =>
        [.. InboxScan.Files(folder).Select(candidate => FormattableString.Invariant($"{candidate.Name} {candidate.Size} {File.GetLastWriteTimeUtc(candidate.Path).Ticks}"))];
}
