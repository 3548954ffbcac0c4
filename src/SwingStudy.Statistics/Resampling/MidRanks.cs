namespace SwingStudy.Statistics.Resampling;

/// <summary>Ranks 1..n with ties sharing their mean rank, doubled so that they are whole numbers.</summary>
internal static class MidRanks
{
    /// <summary>Twice the mid-rank of each value, and Σ(t³ − t) over groups of t tied values.</summary>
    public static (int[] Doubled, double TieTerm) Doubled(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var order = new int[sorted.Length];
        for (var i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(sorted, order);
        var doubled = new int[sorted.Length];
        var ties = 0.0;
        for (int start = 0, end; start < sorted.Length; start = end)
        {
            end = start + 1;
            while (end < sorted.Length && sorted[end] == sorted[start])
                end++;
            double size = end - start;
            ties += (size * size * size) - size;
            for (var i = start; i < end; i++)
                doubled[order[i]] = start + end + 1;
        }

        return (doubled, ties);
    }
}
