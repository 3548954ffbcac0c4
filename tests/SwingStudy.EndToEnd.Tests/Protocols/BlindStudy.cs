namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>A locked study with data whose analyst is blind; for tests that only look.</summary>
public sealed class BlindStudy : IDisposable
{
    public BlindStudy()
    {
        Study.Run("protocol", "lock").Expect(0);
        Study.Measure();
    }

    internal PlannedStudy Study { get; } = new();

    public void Dispose() => Study.Dispose();
}
