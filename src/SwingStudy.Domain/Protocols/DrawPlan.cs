namespace SwingStudy.Domain.Protocols;

/// <summary>What the randomization of a protocol decides: over how many sessions, within which limits, in how many ways.</summary>
/// <remarks>
/// Sessions are counted from 0 here, so that a start is the number of sessions before it. Sources: Edgington (1975), Journal of Psychology 90:57–68
/// (start); Wampold and Worsham (1986), Behavioral Assessment 8:135–143 (order); Koehler and Levin (1998), Psychological Methods 3:206–217 (both);
/// Onghena (1992), Behavioral Assessment 14:153–171 (changes); Onghena and Edgington (1994), Behaviour Research and Therapy 32:783–786 (alternation).
/// </remarks>
public sealed record DrawPlan
{
    /// <summary>Kind, a word of <see cref="Randomization.Kinds"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>Sessions of a player that the draw decides about.</summary>
    public required int Sessions { get; init; }

    /// <summary>Whether all players belong into one draw and one test; else each player is one of its own.</summary>
    public bool IsJoint { get; init; }

    /// <summary>Whether it is drawn which player has which window.</summary>
    public bool OrderDrawn { get; init; }

    /// <summary>Admissible starts: one window a player in a joint draw, else the one window of everybody; empty where no start is drawn.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Windows { get; init; } = [];

    /// <summary>Number of phases whose changes are drawn; null where none are.</summary>
    public int? Phases { get; init; }

    /// <summary>Fewest sessions of each of these phases; null where none are.</summary>
    public int? Least { get; init; }

    /// <summary>Sessions with the intervention (alternation); null elsewhere.</summary>
    public int? WithIntervention { get; init; }

    /// <summary>Most sessions of one condition in a row (alternation); null elsewhere.</summary>
    public int? LongestRun { get; init; }

    /// <summary>Number of assignments: of all players together in a joint draw, else of each player.</summary>
    public required double Assignments { get; init; }

    /// <summary>The smallest p that a randomization test can give: of all players in a joint draw, else of one player.</summary>
    public double SmallestPossibleP => 1 / Assignments;

    /// <summary>What the protocol's draw decides; null when nothing is drawn or the protocol does not say enough.</summary>
    public static DrawPlan? Of(Protocol protocol)
    {
        var players = protocol.Players?.Count;
        var before = protocol.Phases.FirstOrDefault(phase => phase.Role == PhaseRole.Baseline);
        var with = protocol.Phases.FirstOrDefault(phase => phase.Role == PhaseRole.Intervention);
        if (protocol.Randomization is not { } draw || before is null || with is null)
            return null;
        var stagger = draw.Stagger ?? Randomization.DefaultStagger;
        var isStaggered = protocol.Design == DesignKind.MultipleBaseline;
        return draw.Kind switch
        {
            Randomization.PhaseStart when draw is { EarliestSession: { } earliest, LatestSession: { } latest } && earliest <= latest =>
                Starts(draw.Kind, with, earliest, latest, isStaggered ? draw.Stagger ?? 0 : 0, isStaggered ? players ?? 1 : 1, isStaggered, orderDrawn: false),
            Randomization.Order when players is { } count =>
                Starts(draw.Kind, with, First(draw, before), First(draw, before), stagger, count, isJoint: true, orderDrawn: true),
            Randomization.OrderAndStart when players is { } count && draw.LatestSession is { } latest && First(draw, before) <= latest =>
                Starts(draw.Kind, with, First(draw, before), latest, stagger, count, isJoint: true, orderDrawn: true),
            Randomization.PhaseChanges when draw.Sessions is { } sessions => Changes(protocol, sessions),
            Randomization.Alternation => Alternating(before, with, draw.LongestRun ?? Randomization.DefaultLongestRun),
            _ => null,
        };
    }

    /// <summary>The phases that take turns from the first on: baseline, intervention, baseline, intervention.</summary>
    public static IReadOnlyList<Phase> InTurn(Protocol protocol) =>
        [.. protocol.Phases.TakeWhile((phase, i) => phase.Role == (i % 2 == 0 ? PhaseRole.Baseline : PhaseRole.Intervention))];

    private static int First(Randomization draw, Phase before) => draw.EarliestSession ?? (before.MinimumSessions + 1);

    private static DrawPlan Starts(string kind, Phase with, int earliest, int latest, int stagger, int players, bool isJoint, bool orderDrawn)
    {
        var windows = Enumerable.Range(0, players)
            .Select(tier => (IReadOnlyList<int>)[.. Enumerable.Range(earliest - 1 + (tier * stagger), latest - earliest + 1)]).ToList();
        var starts = RandomizationSize.PhaseStart(earliest, latest, players);
        return new()
        {
            Kind = kind,
            Sessions = windows[^1][^1] + with.MinimumSessions,
            IsJoint = isJoint,
            OrderDrawn = orderDrawn,
            Windows = windows,
            Assignments = orderDrawn ? starts * RandomizationSize.Order(players) : starts,
        };
    }

    private static DrawPlan? Changes(Protocol protocol, int sessions)
    {
        var phases = InTurn(protocol);
        var least = phases.Count == 0 ? 1 : phases.Max(phase => phase.MinimumSessions);
        var ways = phases.Count < 2 ? 0 : RandomizationSize.PhaseChanges(sessions, phases.Count, least);
        return ways < 1 ? null : new() { Kind = Randomization.PhaseChanges, Sessions = sessions, Phases = phases.Count, Least = least, Assignments = ways };
    }

    private static DrawPlan? Alternating(Phase before, Phase with, int longestRun)
    {
        var ways = RandomizationSize.Alternation(before.MinimumSessions, with.MinimumSessions, longestRun);
        return ways < 1 ? null : new()
        {
            Kind = Randomization.Alternation,
            Sessions = before.MinimumSessions + with.MinimumSessions,
            WithIntervention = with.MinimumSessions,
            LongestRun = longestRun,
            Assignments = ways,
        };
    }
}
