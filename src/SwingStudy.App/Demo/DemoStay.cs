using NodaTime;

namespace SwingStudy.App.Demo;

/// <summary>One or two players at the station, whose swings the bay sensor writes to one export.</summary>
/// <param name="Sessions">The sessions, one a player.</param>
internal sealed record DemoStay(IReadOnlyList<DemoSession> Sessions)
{
    /// <summary>Start of the stay.</summary>
    public LocalDateTime Start => Sessions[0].Start;
}
