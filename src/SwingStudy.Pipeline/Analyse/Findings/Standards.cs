using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Which published design standard the data of a comparison meet. A point is the mean of one session, never one swing.</summary>
internal static class Standards
{
    private const int MostReasons = 3;

    /// <summary>The reason for one player: of the player's own phases, or of all players' in a multiple baseline.</summary>
    /// <param name="player">The player.</param>
    /// <param name="all">All players in the same comparison.</param>
    /// <param name="settings">Settings.</param>
    public static Reason? Of(PlayerChange player, IReadOnlyList<PlayerChange> all, FindingSettings settings)
    {
        if (!player.Contrast.IsWithCue)
            return null;
        var counted = settings.Design == DesignKind.MultipleBaseline ? all : [player];
        var judgement = StandardJudgement.Of(settings.Standard, settings.Design, [.. counted.SelectMany(change => Points(change, settings))], LongestRun(player, settings));
        var rating = judgement.Rating switch
        {
            StandardRating.Meets => "met",
            StandardRating.WithReservations => "met with reservations",
            StandardRating.DoesNot => "not met",
            StandardRating.NotCovered => "not applicable",
            var unknown => throw new InvalidOperationException($"Unknown rating {unknown}."),
        };
        var reasons = judgement.Reasons.Count == 0 ? "" : $" ({string.Join("; ", judgement.Reasons.Take(MostReasons))}{(judgement.Reasons.Count > MostReasons ? "; and more" : "")})";
        return new Reason(ReasonCode.DesignStandard, $"{settings.Standard.Title}, edition of {settings.Standard.Year}: {rating}{reasons}; a point is one session, however many swings it holds");
    }

    private static IEnumerable<PhasePoints> Points(PlayerChange player, FindingSettings settings) => settings.Phases.Select(phase => new PhasePoints(
        player.Participant, phase.Name, RoleOf(phase), player.Compared.In(phase).Select(value => value.Session).Distinct(StringComparer.Ordinal).Count()));

    private static PhaseRole RoleOf(PhaseSetting phase) =>
        phase.IsBaseline ? PhaseRole.Baseline : phase.IsIntervention ? PhaseRole.Intervention : phase.IsTransfer ? PhaseRole.Transfer : PhaseRole.FollowUp;

    private static int? LongestRun(PlayerChange player, FindingSettings settings)
    {
        if (settings.Design != DesignKind.Alternating)
            return null;
        int longest = 0, run = 0;
        bool? last = null;
        foreach (var flag in Randomization.ConditionSeries.Of(player.Compared.Values, settings.Phases).WithIntervention)
        {
            run = flag == last ? run + 1 : 1;
            last = flag;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
