using SwingStudy.Domain.Protocols;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Planning;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Pipeline.Planning;

/// <summary>Power of a protocol's randomization test when its phases have another number of sessions: the draw keeps its kind, its width and its staggering.</summary>
internal static class DrawnPower
{
    /// <summary>Assignments that a simulated study goes through at most.</summary>
    private const double MostAssignments = 20_000;

    /// <summary>The power; null where nothing is drawn, or the sessions do not fit the draw.</summary>
    public static PlannedPower? Of(PlanRequest request, NoiseModel noise, int sessions, int swings, Xoshiro256 chance)
    {
        if (DrawPlan.Of(WithSessions(request.Protocol, sessions, request.Players)) is not { } plan)
            return null;
        var alpha = 1 - request.Protocol.Analysis.Confidence;
        if (plan.IsJoint)
        {
            return RandomizedDesignPower.MultipleBaseline(
                noise, plan.Sessions, [.. plan.Windows.Select(window => window.ToArray())], plan.OrderDrawn, swings, request.Change, chance, request.Replications, alpha);
        }

        AssignmentScheme scheme = plan.Kind switch
        {
            Randomization.PhaseChanges => new PhaseChangeScheme(plan.Sessions, plan.Phases!.Value, plan.Least!.Value),
            Randomization.Alternation => new AlternatingScheme(plan.Sessions - plan.WithIntervention!.Value, plan.WithIntervention.Value, plan.LongestRun!.Value),
            _ => new PhaseStartScheme(plan.Sessions, plan.Windows[0]),
        };
        return scheme.Count > MostAssignments ? null : RandomizedDesignPower.ByScheme(noise, scheme, 1, swings, request.Change, chance, request.Replications, alpha);
    }

    /// <summary>The protocol with that many sessions in every baseline and intervention: windows move along, spare sessions of drawn changes stay as many.</summary>
    private static Protocol WithSessions(Protocol protocol, int sessions, int players)
    {
        var before = protocol.Phases.FirstOrDefault(phase => phase.Role == PhaseRole.Baseline)?.MinimumSessions ?? sessions;
        var turns = DrawPlan.InTurn(protocol);
        var least = turns.Count > 0 ? turns.Max(phase => phase.MinimumSessions) : sessions;
        return protocol with
        {
            Players = new(players, ""),
            Phases = [.. protocol.Phases.Select(phase => phase.Role is PhaseRole.Baseline or PhaseRole.Intervention ? phase with { MinimumSessions = sessions } : phase)],
            Randomization = protocol.Randomization is not { } draw ? null : draw with
            {
                EarliestSession = draw.EarliestSession + sessions - before,
                LatestSession = draw.LatestSession + sessions - before,
                Sessions = draw.Sessions + (turns.Count * (sessions - least)),
            },
        };
    }
}
