namespace SwingStudy.Pipeline.Link;

/// <summary>Pairs two ascending lists of times one to one, in order, leaving out what has no partner.</summary>
internal static class OrderedPairs
{
    /// <summary>The pairing with the most pairs and, among those, the smallest sum of residuals.</summary>
    public static IReadOnlyList<ClockPair> Of(IReadOnlyList<long> reference, IReadOnlyList<long> device, long offset, long tolerance)
    {
        var (rows, columns) = (reference.Count, device.Count);
        var best = new (int Pairs, long Residual)[rows + 1, columns + 1];
        for (var i = rows - 1; i >= 0; i--)
        {
            for (var j = columns - 1; j >= 0; j--)
            {
                var skip = Better(best[i + 1, j], best[i, j + 1]) ? best[i + 1, j] : best[i, j + 1];
                best[i, j] = Paired(i, j) is { } paired && Better(paired, skip) ? paired : skip;
            }
        }

        var pairs = new List<ClockPair>();
        for (var (i, j) = (0, 0); i < rows && j < columns;)
        {
            if (Paired(i, j) is { } paired && paired == best[i, j])
                pairs.Add(new ClockPair(i, j, Residual(i++, j++)));
            else if (best[i + 1, j] == best[i, j])
                i++;
            else
                j++;
        }

        return pairs;

        long Residual(int i, int j) => device[j] - offset - reference[i];

        (int Pairs, long Residual)? Paired(int i, int j) => Math.Abs(Residual(i, j)) is var residual && residual <= tolerance
            ? (best[i + 1, j + 1].Pairs + 1, best[i + 1, j + 1].Residual + residual)
            : null;
    }

    private static bool Better((int Pairs, long Residual) one, (int Pairs, long Residual) other) =>
        one.Pairs > other.Pairs || (one.Pairs == other.Pairs && one.Residual < other.Residual);
}
