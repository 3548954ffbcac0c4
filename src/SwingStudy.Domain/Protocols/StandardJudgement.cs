using System.Globalization;

namespace SwingStudy.Domain.Protocols;

/// <summary>Which design standards a study meets, by its numbers of phases, points and demonstrations.</summary>
/// <param name="Edition">Name of the edition.</param>
/// <param name="Rating">The rating.</param>
/// <param name="Reasons">Why it is no better; empty when it meets all that can be judged.</param>
/// <param name="NotJudged">What the edition also asks for and no table can show.</param>
public sealed record StandardJudgement(string Edition, StandardRating Rating, IReadOnlyList<string> Reasons, IReadOnlyList<string> NotJudged)
{
    /// <summary>Judges phases as planned or as done.</summary>
    /// <param name="standard">The edition.</param>
    /// <param name="design">The design.</param>
    /// <param name="phases">
    /// Phases of one player in their order for a withdrawal or alternating design; of all players for a multiple baseline. Phases without points count as
    /// not done. Roles other than baseline and intervention are passed over.
    /// </param>
    /// <param name="longestRun">Most sessions of one condition in a row, of an alternating design; null where unknown.</param>
    public static StandardJudgement Of(DesignStandard standard, DesignKind design, IReadOnlyList<PhasePoints> phases, int? longestRun = null)
    {
        if (standard.Of(design) is not { } threshold)
        {
            return new(standard.Name, design is DesignKind.PrePost ? StandardRating.DoesNot : StandardRating.NotCovered, [Uncovered(standard, design)], standard.NotJudged);
        }

        var done = phases.Where(phase => phase.Role is PhaseRole.Baseline or PhaseRole.Intervention && phase.Points > 0).ToList();
        List<(StandardRating Rating, string Reason)> faults = [.. Phases(threshold, done), .. Demonstrations(standard, design, done), .. Points(threshold, done), .. Runs(threshold, longestRun)];
        return new(standard.Name, faults.Count == 0 ? StandardRating.Meets : faults.Max(fault => fault.Rating), [.. faults.Select(fault => fault.Reason)], standard.NotJudged);
    }

    private static string Uncovered(DesignStandard standard, DesignKind design) => design is DesignKind.PrePost
        ? string.Create(CultureInfo.InvariantCulture, $"a change from baseline to intervention is one demonstration; {standard.Demonstrations} at different times are asked for")
        : $"the edition has no standard for designs of kind '{Identifiers.Word.Of(design)}'";

    private static IEnumerable<(StandardRating Rating, string Reason)> Phases(DesignThreshold threshold, List<PhasePoints> done)
    {
        if (done.Count < threshold.Phases)
            yield return (StandardRating.DoesNot, string.Create(CultureInfo.InvariantCulture, $"{done.Count} phases; {threshold.Phases} are asked for"));
    }

    private static IEnumerable<(StandardRating Rating, string Reason)> Demonstrations(DesignStandard standard, DesignKind design, List<PhasePoints> done)
    {
        var shown = design switch
        {
            DesignKind.MultipleBaseline => done.GroupBy(phase => phase.Participant, StringComparer.Ordinal).Count(player => player.Select(phase => phase.Role).Distinct().Count() == 2),
            DesignKind.Withdrawal => done.GroupBy(phase => phase.Participant, StringComparer.Ordinal).Select(player => player.Zip(player.Skip(1)).Count(pair => pair.First.Role != pair.Second.Role)).DefaultIfEmpty(0).Min(),
            _ => standard.Demonstrations,
        };
        if (shown < standard.Demonstrations)
        {
            yield return (StandardRating.DoesNot, string.Create(CultureInfo.InvariantCulture,
                $"{shown} {(shown == 1 ? "demonstration" : "demonstrations")} of an effect at different times; {standard.Demonstrations} are asked for"));
        }
    }

    private static IEnumerable<(StandardRating Rating, string Reason)> Points(DesignThreshold threshold, List<PhasePoints> done) => done
        .Where(phase => phase.Points < threshold.Meets)
        .Select(phase => phase.Points >= threshold.Reservations
            ? (StandardRating.WithReservations, string.Create(CultureInfo.InvariantCulture, $"{phase.Points} points in {phase.Phase} of {phase.Participant}; {threshold.Meets} meet the standard"))
            : (StandardRating.DoesNot, string.Create(CultureInfo.InvariantCulture, $"{phase.Points} {(phase.Points == 1 ? "point" : "points")} in {phase.Phase} of {phase.Participant}; {threshold.Reservations} are the least")));

    private static IEnumerable<(StandardRating Rating, string Reason)> Runs(DesignThreshold threshold, int? longestRun)
    {
        if (threshold.LongestRun is { } most && longestRun > most)
            yield return (StandardRating.DoesNot, string.Create(CultureInfo.InvariantCulture, $"{longestRun} sessions of one condition in a row; {most} are the most"));
    }
}
