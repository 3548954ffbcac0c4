using SwingStudy.Domain.Protocols;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Planning;

namespace SwingStudy.Pipeline.Planning;

/// <summary>Sessions, swings and players that a study needs, by simulated studies.</summary>
public sealed record StudyPlan
{
    private const int MostPlayers = 12;

    /// <summary>One row a size, sessions first.</summary>
    public required IReadOnlyList<PlanRow> Rows { get; init; }

    /// <summary>The smallest size, fewest sessions first, with which one player's session means reach the power (t test); null when none does.</summary>
    public required PlanRow? EnoughForPlayer { get; init; }

    /// <summary>The smallest size with which the randomization test of the draw reaches the power; null when none does, or nothing is drawn.</summary>
    public required PlanRow? EnoughForDraw { get; init; }

    /// <summary>Power of the mean change by number of players, each with the planned sessions and swings.</summary>
    public required IReadOnlyList<PlayersRow> Players { get; init; }

    /// <summary>Sessions of each phase that the protocol asks for at least, the smallest of its compared phases.</summary>
    public required int PlannedSessions { get; init; }

    /// <summary>Swings of each session that the protocol asks for at least, the smallest of its compared phases.</summary>
    public required int PlannedSwings { get; init; }

    /// <summary>Fewest sessions of each phase with which day-to-day scatter alone leaves room for the change.</summary>
    public required int LeastSessions { get; init; }

    /// <summary>Whether, with the planned sessions, no number of swings makes the change detectable: more swings in one day cannot beat the scatter between days.</summary>
    public bool SwingsCannotHelp => PlannedSessions < LeastSessions;

    /// <summary>Makes the plan.</summary>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static StudyPlan Of(PlanRequest request)
    {
        var chance = new Xoshiro256(request.Protocol.Analysis.Seed).Split("plan");
        var noise = request.Noise.Model(request.ChangeBetweenPlayers);
        List<PlanRow> rows =
        [
            .. from sessions in request.Sessions.Distinct().Order()
               from swings in request.Swings.Distinct().Order()
               select Row(request, noise, sessions, swings, chance.Split(FormattableString.Invariant($"{sessions}x{swings}"))),
        ];
        var compared = Compared(request.Protocol);
        var (plannedSessions, plannedSwings) = (compared.Min(phase => phase.MinimumSessions), compared.Min(phase => phase.MinimumSwings));
        return new()
        {
            Rows = rows,
            EnoughForPlayer = rows.FirstOrDefault(row => row.Detectable <= Math.Abs(request.Change) && row.PlayerPower >= request.Power),
            EnoughForDraw = rows.FirstOrDefault(row => row.DrawPower >= request.Power),
            Players = [.. Enumerable.Range(2, MostPlayers - 1).Select(players => OfPlayers(request, noise, players, plannedSessions, plannedSwings, chance.Split(FormattableString.Invariant($"players {players}"))))],
            PlannedSessions = plannedSessions,
            PlannedSwings = plannedSwings,
            LeastSessions = Math.Max(1, (int)Math.Ceiling(Math.Pow(Critical(request) * Math.Sqrt(2) * request.Noise.Session / request.Change, 2) - 1e-9)),
        };
    }

    /// <summary>Smallest detectable change of a difference of two phases of equal size, canonical unit.</summary>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static double Detectable(PlanRequest request, int sessions, int swings) =>
        Critical(request) * Math.Sqrt(2 * request.Noise.Model().VarianceOfPhaseMean(sessions, swings));

    private static double Critical(PlanRequest request) => Normal.Critical(request.Protocol.Analysis.Confidence);

    private static List<Phase> Compared(Protocol protocol)
    {
        var names = protocol.Contrasts.SelectMany(contrast => new[] { contrast.From, contrast.To }).ToHashSet(StringComparer.Ordinal);
        var compared = protocol.Phases.Where(phase => names.Contains(phase.Name) && phase.Role is PhaseRole.Baseline or PhaseRole.Intervention).ToList();
        return compared.Count > 0 ? compared : [.. protocol.Phases];
    }

    private static PlanRow Row(PlanRequest request, NoiseModel noise, int sessions, int swings, Xoshiro256 chance)
    {
        var alpha = 1 - request.Protocol.Analysis.Confidence;
        var one = PrePostPower.Simulate(
            noise with { ChangeBetweenPlayers = 0 }, new StudySize { Players = 1, Sessions = sessions, Swings = swings }, request.Change, chance.Split("player"), request.Replications, alpha);
        var drawn = DrawnPower.Of(request, noise, sessions, swings, chance.Split("draw"));
        return new(sessions, swings, Detectable(request, sessions, swings), Critical(request) * request.Noise.Session * Math.Sqrt(2.0 / sessions), one?.Power, drawn?.Power, drawn?.SmallestPossibleP);
    }

    private static PlayersRow OfPlayers(PlanRequest request, NoiseModel noise, int players, int sessions, int swings, Xoshiro256 chance) => new(
        players,
        PrePostPower.Simulate(
            noise, new StudySize { Players = players, Sessions = sessions, Swings = swings }, request.Change, chance, request.Replications, 1 - request.Protocol.Analysis.Confidence)!.Power);
}
