using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

public sealed class IntakeWatcherTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(0.2)]
    public async Task AFileThatArrivesIsTakenIn(double seconds)
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/first.csv", "No;Player;When;Club speed\n1;Fern;07.09.2026 10:00:00;90\n");
        var reports = new List<Outcome<IntakeReport>>();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        stop.CancelAfter(TimeSpan.FromSeconds(30));
        var watcher = new IntakeWatcher(study.Folder, () => study.Intake.Run(), TimeSpan.FromSeconds(seconds), TimeProvider.System);
        var watching = watcher.WatchAsync(
            report =>
            {
                reports.Add(report);
                if (reports.Count == 1)
                    study.Drop("bay/second.csv", "No;Player;When;Club speed\n2;Fern;07.09.2026 10:01:00;90\n");
                else if (reports.SelectMany(made => made.Value!.Files).Count(file => file.Outcome == FileOutcome.Taken) == 2)
                    stop.Cancel();
            },
            stop.Token);
        await watching;
        Assert.Equal(["1", "2"], study.Captures("sequence"));
    }
}
