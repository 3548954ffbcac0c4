namespace SwingStudy.Pipeline.Link;

/// <summary>Which swings of two devices are the same, when their clocks differ by an unknown constant and either may have missed swings.</summary>
/// <remarks>
/// The offset is voted for by all pairwise differences of times: the window of twice the tolerance that holds most of them wins. Swings are
/// then paired in order, one to one, with gaps allowed (dynamic programming: most pairs, then least residual), the offset is moved to the median
/// of the residuals, and pairing is repeated once. Confidence is (v − w)/v, with v pairs made and w votes for the best other offset, at least one:
/// a single pair proves nothing, and evenly spaced swings that fit one place further as well give a confidence near zero.
/// </remarks>
/// <param name="OffsetMillis">Device clock minus reference clock.</param>
/// <param name="Pairs">Pairs in order of time.</param>
/// <param name="Confidence">0 to 1.</param>
internal sealed record ClockMatch(long OffsetMillis, IReadOnlyList<ClockPair> Pairs, double Confidence)
{
    private static readonly ClockMatch None = new(0, [], 0);

    /// <summary>Matches two lists of times.</summary>
    /// <param name="reference">Times on the reference clock, milliseconds, ascending.</param>
    /// <param name="device">Times on the device's clock, milliseconds, ascending.</param>
    /// <param name="toleranceMillis">Largest residual of a pair.</param>
    public static ClockMatch Between(IReadOnlyList<long> reference, IReadOnlyList<long> device, long toleranceMillis)
    {
        if (reference.Count == 0 || device.Count == 0)
            return None;
        var differences = new long[reference.Count * device.Count];
        var next = 0;
        foreach (var r in reference)
        {
            foreach (var d in device)
                differences[next++] = d - r;
        }

        Array.Sort(differences);
        var (offset, _) = Densest(differences, 2 * toleranceMillis, _ => true);
        var pairs = OrderedPairs.Of(reference, device, offset, toleranceMillis);
        if (pairs.Count == 0)
            return None;
        offset += Median([.. pairs.Select(pair => pair.ResidualMillis)]);
        pairs = OrderedPairs.Of(reference, device, offset, toleranceMillis);
        var (_, others) = Densest(differences, 2 * toleranceMillis, middle => Math.Abs(middle - offset) > 2 * toleranceMillis);
        return new ClockMatch(offset, pairs, Math.Max(0, (double)(pairs.Count - Math.Max(1, others)) / pairs.Count));
    }

    /// <summary>Median of the differences in the fullest window, and their number; of equally full ones the one nearest to equal clocks.</summary>
    private static (long Offset, int Votes) Densest(long[] sorted, long width, Func<long, bool> counts)
    {
        var (offset, votes) = (0L, 0);
        var low = 0;
        for (var high = 0; high < sorted.Length; high++)
        {
            while (sorted[high] - sorted[low] > width)
                low++;
            var (middle, here) = (sorted[(low + high) / 2], high - low + 1);
            if (counts(middle) && (here > votes || (here == votes && Math.Abs(middle) < Math.Abs(offset))))
                (offset, votes) = (middle, here);
        }

        return (offset, votes);
    }

    private static long Median(long[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
