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

    /// <summary>Changes between phases that each keep a least length: the spare sessions fall among the phases, (spare + phases - 1) over (phases - 1).</summary>
    public static double PhaseChanges(int sessions, int phases, int least)
    {
        var spare = sessions - (phases * least);
        return spare < 0 ? 0 : Choices(spare + phases - 1, phases - 1);
    }

    /// <summary>Sessions of two alternating conditions, n of each, in any order: 2n over n.</summary>
    public static double Alternation(int sessionsEach) => Choices(2 * sessionsEach, sessionsEach);

    /// <summary>Sessions of two alternating conditions with at most so many of one condition in a row.</summary>
    public static double Alternation(int without, int with, int longestRun)
    {
        // ways[a, b, last]: orders of a and b sessions that end with a whole run of the last condition.
        var ways = new double[without + 1, with + 1, 2];
        for (var a = 0; a <= without; a++)
        {
            for (var b = 0; b <= with; b++)
            {
                for (var run = 1; run <= longestRun; run++)
                {
                    if (run <= a)
                        ways[a, b, 0] += a - run + b == 0 ? 1 : ways[a - run, b, 1];
                    if (run <= b)
                        ways[a, b, 1] += a + b - run == 0 ? 1 : ways[a, b - run, 0];
                }
            }
        }

        return ways[without, with, 0] + ways[without, with, 1];
    }

    /// <summary>Number of assignments of a protocol's draw; null when nothing is drawn or the protocol does not say enough.</summary>
    public static double? Of(Protocol protocol) => DrawPlan.Of(protocol)?.Assignments;

    private static double Choices(int of, int chosen)
    {
        var count = 1.0;
        for (var k = 1; k <= chosen; k++)
            count = count * (of - chosen + k) / k;
        return Math.Round(count);
    }
}
