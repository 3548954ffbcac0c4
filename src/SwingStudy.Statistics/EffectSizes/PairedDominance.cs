using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Signs and ranks of paired changes.</summary>
/// <param name="Rises">Pairs that rose.</param>
/// <param name="Falls">Pairs that fell.</param>
/// <param name="Zeros">Pairs that did not change.</param>
/// <param name="RankSumOfRises">T+: mid-ranks of the sizes of the non-zero changes, summed over the rises.</param>
/// <param name="RankSumOfFalls">T−: the same over the falls.</param>
public sealed record PairedDominance(int Rises, int Falls, int Zeros, double RankSumOfRises, double RankSumOfFalls)
{
    /// <summary>Method word of <see cref="ProbabilityOfSuperiority"/>.</summary>
    public const string SuperiorityMethod = "probability-of-superiority-paired";

    /// <summary>Method word of <see cref="RankBiserial"/>.</summary>
    public const string RankBiserialMethod = "rank-biserial-matched";

    /// <summary>Ranks the changes after − before, zero changes left out.</summary>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static PairedDominance Of(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        if (before.Length != after.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {before.Length} before and {after.Length} after.", nameof(after));
        Finite.Require(before, nameof(before));
        Finite.Require(after, nameof(after));
        var changes = new List<double>(before.Length);
        var largest = 0.0;
        for (var i = 0; i < before.Length; i++)
        {
            largest = Math.Max(largest, Math.Max(Math.Abs(before[i]), Math.Abs(after[i])));
            if (after[i] != before[i])
                changes.Add(after[i] - before[i]);
        }

        changes.Sort((a, b) => Math.Abs(a).CompareTo(Math.Abs(b)));
        double plus = 0, minus = 0;

        // Sizes that differ only by the rounding of the subtraction count as tied: 5.1 − 4.9 and 3.2 − 3.0.
        var rounding = 1e-15 * largest;
        for (var start = 0; start < changes.Count;)
        {
            var end = start + 1;
            while (end < changes.Count && Math.Abs(changes[end]) - Math.Abs(changes[start]) <= rounding)
                end++;
            var rank = (start + 1 + end) / 2.0;
            for (var i = start; i < end; i++)
            {
                if (changes[i] > 0)
                    plus += rank;
                else
                    minus += rank;
            }

            start = end;
        }

        var rises = changes.Count(c => c > 0);
        return new PairedDominance(rises, changes.Count - rises, before.Length - changes.Count, plus, minus);
    }

    /// <summary>Mean of [change &gt; 0] + ½ [change = 0] over all pairs.</summary>
    /// <returns>From 0 to 1. Undefined without pairs.</returns>
    public Estimate ProbabilityOfSuperiority()
    {
        var pairs = Rises + Falls + Zeros;
        return pairs == 0
            ? Estimate.NotDefined(SuperiorityMethod, "needs at least 1 pair, got 0")
            : Estimate.Of(SuperiorityMethod, (Rises + (0.5 * Zeros)) / pairs);
    }

    /// <summary>(T+ − T−)/(T+ + T−): the matched-pairs rank-biserial correlation.</summary>
    /// <remarks>Source: Kerby (2014), Comprehensive Psychology 3:11.IT.3.1.</remarks>
    /// <returns>From −1 to 1. Undefined when no pair changed.</returns>
    public Estimate RankBiserial()
    {
        var total = RankSumOfRises + RankSumOfFalls;
        return total > 0
            ? Estimate.Of(RankBiserialMethod, (RankSumOfRises - RankSumOfFalls) / total)
            : Estimate.NotDefined(RankBiserialMethod, "no pair changed");
    }
}
