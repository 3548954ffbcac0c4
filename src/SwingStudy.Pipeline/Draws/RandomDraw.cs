using SwingStudy.Domain.Protocols;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Pipeline.Draws;

/// <summary>Carries out the randomization of a protocol.</summary>
/// <remarks>
/// One stream from the protocol's seed, split by what is drawn and by player, so that a player who joins later changes nothing for the others and
/// anybody can draw again and compare.
/// </remarks>
public static class RandomDraw
{
    /// <summary>Draws.</summary>
    /// <param name="protocol">The protocol, with a randomization.</param>
    /// <param name="plan">What it decides.</param>
    /// <param name="participants">Pseudonyms; of a joint draw as many as the plan has windows.</param>
    /// <param name="record">Number of the draw and of the protocol version, moment and actor, as they go on record.</param>
    /// <exception cref="ArgumentException">The protocol draws nothing, or the number of players is not that of the plan.</exception>
    public static Draw Make(Protocol protocol, DrawPlan plan, IEnumerable<string> participants, DrawRecord record)
    {
        var draw = protocol.Randomization ?? throw new ArgumentException("The protocol draws nothing.", nameof(protocol));
        List<string> players = [.. participants.Order(StringComparer.Ordinal)];
        if (players.Count == 0 || (plan.IsJoint && players.Count != plan.Windows.Count))
            throw new ArgumentException($"{plan.Windows.Count} players are drawn together; got {players.Count}.", nameof(participants));
        var stream = new Xoshiro256(draw.Seed);
        var tiers = Enumerable.Range(0, players.Count).ToArray();
        if (plan.OrderDrawn)
            Shuffle.All(tiers.AsSpan(), stream.Split("order"));
        return new()
        {
            Number = record.Number,
            ProtocolVersion = record.ProtocolVersion,
            Kind = plan.Kind,
            Seed = draw.Seed,
            IsJoint = plan.IsJoint,
            OrderDrawn = plan.OrderDrawn,
            Windows = plan.IsJoint ? plan.Windows : [],
            Assignments = plan.Assignments,
            At = record.At,
            Actor = record.Actor,
            Players = [.. players.Select((player, i) => Drawn(protocol, plan, player, plan.IsJoint ? tiers[i] : null, stream.Split($"{player}/{plan.Kind}")))],
        };
    }

    private static DrawnPlayer Drawn(Protocol protocol, DrawPlan plan, string participant, int? tier, Xoshiro256 stream)
    {
        var set = SetOf(plan, tier ?? 0);
        var scheme = AssignmentSchemes.Of(set);
        var assignment = new bool[scheme.Length];
        scheme.Draw(stream, assignment);
        return new()
        {
            Participant = participant,
            Set = set with { Count = scheme.Count, Listed = scheme.Count <= AssignmentSet.MostListed ? Listed(scheme) : null },
            Assignment = Text(assignment),
            Tier = tier,
            Phases = [.. PhasesOf(protocol, plan, assignment)],
        };
    }

    private static AssignmentSet SetOf(DrawPlan plan, int tier) => new()
    {
        Kind = plan.Kind,
        Sessions = plan.Sessions,
        Starts = plan.Windows.Count > 0 ? plan.Windows[tier] : [],
        Phases = plan.Phases,
        Least = plan.Least,
        WithIntervention = plan.WithIntervention,
        LongestRun = plan.LongestRun,
        Count = 0,
    };

    private static List<string> Listed(AssignmentScheme scheme)
    {
        var all = new List<string>();
        scheme.VisitAll(assignment => all.Add(Text(assignment)));
        return all;
    }

    private static string Text(ReadOnlySpan<bool> assignment)
    {
        Span<char> flags = stackalloc char[assignment.Length];
        for (var i = 0; i < flags.Length; i++)
            flags[i] = assignment[i] ? '1' : '0';
        return new string(flags);
    }

    /// <summary>The phase of each session: drawn ones by their condition, then each further phase with its least number of sessions.</summary>
    private static IEnumerable<string> PhasesOf(Protocol protocol, DrawPlan plan, bool[] assignment)
    {
        List<Phase> drawn = plan.Phases is { } turns
            ? [.. DrawPlan.InTurn(protocol).Take(turns)]
            : [protocol.Phases.First(phase => phase.Role == PhaseRole.Baseline), protocol.Phases.First(phase => phase.Role == PhaseRole.Intervention)];
        var run = 0;
        for (var session = 0; session < assignment.Length; session++)
        {
            if (plan.Phases is null)
                run = assignment[session] ? 1 : 0;
            else if (session > 0 && assignment[session] != assignment[session - 1])
                run++;
            yield return drawn[run].Name;
        }

        foreach (var later in protocol.Phases.Except(drawn).SelectMany(phase => Enumerable.Repeat(phase.Name, phase.MinimumSessions)))
            yield return later;
    }
}
