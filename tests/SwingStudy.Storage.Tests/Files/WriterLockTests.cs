using SwingStudy.Storage.Files;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Files;

public sealed class WriterLockTests : IDisposable
{
    private readonly TemporaryStudy _study = new();

    public void Dispose() => _study.Dispose();

    [Fact]
    public void OneWritesAtATimeAndTheOtherLearnsWho()
    {
        using (Some.Value(WriterLock.Take(_study.Folder)))
        {
            var problem = Some.Problem(WriterLock.Take(_study.Folder));
            Assert.Equal("study-locked", problem.Code);
            Assert.Contains($"process {Environment.ProcessId}", problem.Found, StringComparison.Ordinal);
        }

        Some.Value(WriterLock.Take(_study.Folder)).Dispose();
    }
}
