namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>The part of a list of reference readings in which a device's records keep matching.</summary>
/// <param name="First">Position of its first matched reading.</param>
/// <param name="Last">Position of its last matched reading.</param>
internal readonly record struct DenseRun(int First, int Last)
{
    /// <summary>The run with the largest score: a matched reading counts 1, one without a record takes away so much that a run breaks even at two fifths
    /// of the share that the device could match at best.</summary>
    /// <param name="isMatched">For each reference reading, whether a record matches it; at least one does.</param>
    /// <param name="records">How many records the device has there.</param>
    public static DenseRun Of(ReadOnlySpan<bool> isMatched, int records)
    {
        var even = 0.4 * Math.Clamp((double)records / isMatched.Length, 0.05, 0.9);
        var cost = even / (1 - even);
        var (best, run, start, score, highest) = (new DenseRun(0, 0), 0, 0, 0.0, 0.0);
        for (var i = 0; i < isMatched.Length; i++)
        {
            if (isMatched[i])
            {
                if (run == 0)
                    (start, score) = (i, 0);
                run++;
                score++;
                if (score > highest)
                    (best, highest) = (new DenseRun(start, i), score);
            }
            else if (run > 0 && (score -= cost) <= 0)
            {
                run = 0;
            }
        }

        return best;
    }

    public bool Contains(int position) => First <= position && position <= Last;
}
