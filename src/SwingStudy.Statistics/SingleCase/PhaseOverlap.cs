using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Shares of phase B that lie beyond a mark of phase A, and what must be removed to end the overlap.</summary>
/// <remarks>All treat values as exchangeable within a phase and take no account of trend. Undefined when a phase is empty.</remarks>
public static class PhaseOverlap
{
    /// <summary>Method word of <see cref="PercentageOfNonOverlappingData"/>.</summary>
    public const string PndMethod = "pnd";

    /// <summary>Method word of <see cref="PercentageExceedingMedian"/>.</summary>
    public const string PemMethod = "pem";

    /// <summary>Method word of <see cref="PercentageOfAllNonOverlappingData"/>.</summary>
    public const string PandMethod = "pand";

    /// <summary>Method word of <see cref="RobustImprovementRateDifference"/>.</summary>
    public const string IrdMethod = "ird-robust";

    /// <summary>PND: the share of B values better than the best A value.</summary>
    /// <remarks>Source: Scruggs, Mastropieri and Casto (1987), Remedial and Special Education 8:24–33.</remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate PercentageOfNonOverlappingData(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        if (Refuse(PndMethod, phaseA, phaseB) is { } undefined)
            return undefined;
        var best = phaseA[0];
        foreach (var a in phaseA)
            best = improvement == Improvement.Increase ? Math.Max(best, a) : Math.Min(best, a);
        var beyond = 0;
        foreach (var b in phaseB)
        {
            if (improvement == Improvement.Increase ? b > best : b < best)
                beyond++;
        }

        return new Estimate { Method = PndMethod, Value = (double)beyond / phaseB.Length };
    }

    /// <summary>PEM: the share of B values better than the median of A, ties counted half.</summary>
    /// <remarks>Source: Ma (2006), Behavior Modification 30:598–617.</remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate PercentageExceedingMedian(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        if (Refuse(PemMethod, phaseA, phaseB) is { } undefined)
            return undefined;
        var median = TheilSenLine.MedianOf(phaseA.ToArray());
        var score = 0.0;
        foreach (var b in phaseB)
            score += TiesMiddle(b, median) ? 0.5 : b > median == (improvement == Improvement.Increase) ? 1 : 0;
        return new Estimate { Method = PemMethod, Value = score / phaseB.Length };
    }

    /// <summary>The fewest values to remove from either phase until every B value left is better than every A value left.</summary>
    /// <remarks>Equal values across phases count as overlap. Zero when a phase is empty.</remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static int FewestRemovals(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        Finite.Require(phaseA, nameof(phaseA));
        Finite.Require(phaseB, nameof(phaseB));
        var sign = improvement == Improvement.Increase ? 1 : -1;
        var a = Signed(phaseA, sign);
        var b = Signed(phaseB, sign);

        // Keep A below a cut and B from the cut on. Cutting at each B value, or above all, covers every distinct choice.
        var fewest = b.Length;
        var below = 0;
        for (var cut = 0; cut < b.Length; cut++)
        {
            while (below < a.Length && a[below] < b[cut])
                below++;
            fewest = Math.Min(fewest, cut + a.Length - below);
        }

        return fewest;
    }

    /// <summary>PAND: the share of all values that can stay when overlap is ended by the fewest removals.</summary>
    /// <remarks>1 − removals/(m + n). Source: Parker, Hagan-Burke and Vannest (2007), Journal of Special Education 40:194–204.</remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate PercentageOfAllNonOverlappingData(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        if (Refuse(PandMethod, phaseA, phaseB) is { } undefined)
            return undefined;
        var removed = FewestRemovals(phaseA, phaseB, improvement);
        return new Estimate { Method = PandMethod, Value = 1 - ((double)removed / (phaseA.Length + phaseB.Length)) };
    }

    /// <summary>IRD, balanced robust form: improvement rate of B minus that of A after the fewest removals, shared evenly between the cells.</summary>
    /// <remarks>
    /// IRD = 1 − (m + n)²/(2mn) · (1 − PAND). Source: Parker, Vannest and Davis (2011), Behavior Modification 35:303–322.
    /// </remarks>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Estimate RobustImprovementRateDifference(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase)
    {
        if (Refuse(IrdMethod, phaseA, phaseB) is { } undefined)
            return undefined;
        double removed = FewestRemovals(phaseA, phaseB, improvement), m = phaseA.Length, n = phaseB.Length;
        return new Estimate { Method = IrdMethod, Value = 1 - ((m + n) * removed / (2 * m * n)) };
    }

    internal static string EmptyPhase(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB) =>
        $"needs at least one value in each phase, got {phaseA.Length} and {phaseB.Length}";

    private static Estimate? Refuse(string method, ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB)
    {
        Finite.Require(phaseA, nameof(phaseA));
        Finite.Require(phaseB, nameof(phaseB));
        return phaseA.IsEmpty || phaseB.IsEmpty ? Estimate.NotDefined(method, EmptyPhase(phaseA, phaseB)) : null;
    }

    // The middle of two decimals, such as 0.1 and 0.2, need not be the nearest number to its own decimal, 0.15: a few roundings apart is equal.
    private static bool TiesMiddle(double value, double middle) =>
        Math.Abs(value - middle) <= 4 * (Math.BitIncrement(Math.Abs(middle)) - Math.Abs(middle));

    private static double[] Signed(ReadOnlySpan<double> values, int sign)
    {
        var sorted = new double[values.Length];
        for (var i = 0; i < sorted.Length; i++)
            sorted[i] = sign * values[i];
        Array.Sort(sorted);
        return sorted;
    }
}
