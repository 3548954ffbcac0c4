namespace SwingStudy.Domain.Protocols;

/// <summary>How many assignments a draw chooses among, which bounds every p value that a test of it can give.</summary>
/// <remarks>
/// The smallest possible p is 1 over the number of assignments. Source: Edgington and Onghena (2007), Randomization Tests, 4th ed.; Kratochwill and
/// Levin (2010), Psychological Methods 15:124.
/// </remarks>
public static class RandomizationSize
{
    /// <summary>Start of an intervention between two sessions: latest - earliest + 1 for each player, independently.</summary>
    public static double PhaseStart(int earliestSession, int latestSession, int players = 1) =>
        Math.Pow(Math.Max(0, latestSession - earliestSession + 1), players);

    /// <summary>Order in which k players start: k!.</summary>
    public static double Order(int players)
    {
        var count = 1.0;
        for (var k = 2; k <= players; k++)
            count *= k;
        return count;
    }

    /// <summary>Sessions of two alternating conditions, n of each: 2n over n.</summary>
    public static double Alternation(int sessionsEach)
    {
        var count = 1.0;
        for (var k = 1; k <= sessionsEach; k++)
            count = count * (sessionsEach + k) / k;
        return Math.Round(count);
    }

    /// <summary>Number of assignments of a protocol's draw; null when nothing is drawn or the protocol does not say enough.</summary>
    public static double? Of(Protocol protocol)
    {
        var players = protocol.Players?.Count;
        return protocol.Randomization switch
        {
            { Kind: Randomization.PhaseStart, EarliestSession: { } earliest, LatestSession: { } latest } =>
                PhaseStart(earliest, latest, protocol.Design == DesignKind.MultipleBaseline ? players ?? 1 : 1),
            { Kind: Randomization.Order } when players is { } count => Order(count),
            { Kind: Randomization.Alternation } => Alternation(protocol.Phases.Count == 0 ? 0 : protocol.Phases.Min(phase => phase.MinimumSessions)),
            _ => null,
        };
    }
}
