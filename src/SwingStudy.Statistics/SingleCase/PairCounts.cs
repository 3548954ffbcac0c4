using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Every value of phase A compared with every value of phase B, in the direction of improvement.</summary>
/// <param name="Improved">Pairs in which the B value is better.</param>
/// <param name="Worse">Pairs in which the A value is better.</param>
/// <param name="Tied">Pairs of equal values.</param>
public readonly record struct PairCounts(long Improved, long Worse, long Tied)
{
    /// <summary>Number of pairs, n(A) · n(B).</summary>
    public long Total => Improved + Worse + Tied;

    /// <summary>Kendall's S between the phases: improved minus worse.</summary>
    public long S => Improved - Worse;

    /// <summary>Counts all pairs.</summary>
    /// <param name="phaseA">Values of the earlier phase, any order.</param>
    /// <param name="phaseB">Values of the later phase, any order.</param>
    /// <param name="improvement">Which way counts as better.</param>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static PairCounts Of(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement)
    {
        Finite.RequireComputed(phaseA, nameof(phaseA));
        Finite.RequireComputed(phaseB, nameof(phaseB));
        long above = 0, below = 0;
        foreach (var a in phaseA)
        {
            foreach (var b in phaseB)
            {
                if (b > a)
                    above++;
                else if (b < a)
                    below++;
            }
        }

        var ties = ((long)phaseA.Length * phaseB.Length) - above - below;
        return improvement == Improvement.Increase ? new PairCounts(above, below, ties) : new PairCounts(below, above, ties);
    }
}
