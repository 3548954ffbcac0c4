namespace SwingStudy.Statistics.Resampling;

/// <summary>Counts over all subsets of up to some 40 numbers without visiting each: both halves are listed, sorted and matched.</summary>
/// <remarks>Source: Horowitz and Sahni (1974), Journal of the ACM 21:277–292 (splitting a set in two).</remarks>
internal static class SubsetSums
{
    /// <summary>Largest set that is listed: two halves of 2^18 sums each.</summary>
    public const int LargestSet = 36;

    /// <summary>
    /// How many subsets of <paramref name="size"/> of the values have a sum of at least <paramref name="high"/>, and at most <paramref name="low"/>.
    /// </summary>
    public static (long AtLeastHigh, long AtMostLow) CountOfSize(ReadOnlySpan<double> values, int size, double high, double low)
    {
        var half = values.Length / 2;
        var left = BySize(values[..half]);
        var right = BySize(values[half..]);
        long above = 0, below = 0;
        for (var k = Math.Max(0, size - (values.Length - half)); k <= Math.Min(half, size); k++)
        {
            above += PairsAtLeast(left[k], right[size - k], high);
            below += PairsAtMost(left[k], right[size - k], low);
        }

        return (above, below);
    }

    /// <summary>
    /// How many of the 2^n ways to give the values signs have a sum of at least <paramref name="high"/>, and at most <paramref name="low"/>.
    /// </summary>
    public static (long AtLeastHigh, long AtMostLow) CountSigned(ReadOnlySpan<double> values, double high, double low)
    {
        var half = values.Length / 2;
        var left = Signed(values[..half]);
        var right = Signed(values[half..]);
        return (PairsAtLeast(left, right, high), PairsAtMost(left, right, low));
    }

    private static double[][] BySize(ReadOnlySpan<double> values)
    {
        var sums = new double[1 << values.Length];
        var filled = new int[values.Length + 1];
        var lists = new double[values.Length + 1][];
        var binomial = 1L;
        for (var k = 0; k < lists.Length; k++)
        {
            lists[k] = new double[binomial];
            binomial = binomial * (values.Length - k) / (k + 1);
        }

        for (var set = 0; set < sums.Length; set++)
        {
            if (set > 0)
            {
                var lowest = System.Numerics.BitOperations.TrailingZeroCount(set);
                sums[set] = sums[set & (set - 1)] + values[lowest];
            }

            var size = System.Numerics.BitOperations.PopCount((uint)set);
            lists[size][filled[size]++] = sums[set];
        }

        foreach (var list in lists)
            Array.Sort(list);
        return lists;
    }

    private static double[] Signed(ReadOnlySpan<double> values)
    {
        var sums = new double[1 << values.Length];
        var length = 1;
        foreach (var value in values)
        {
            for (var i = 0; i < length; i++)
            {
                sums[length + i] = sums[i] - value;
                sums[i] += value;
            }

            length *= 2;
        }

        Array.Sort(sums);
        return sums;
    }

    private static long PairsAtLeast(double[] left, double[] right, double threshold)
    {
        var count = 0L;
        var j = right.Length;
        foreach (var sum in left)
        {
            while (j > 0 && sum + right[j - 1] >= threshold)
                j--;
            count += right.Length - j;
        }

        return count;
    }

    private static long PairsAtMost(double[] left, double[] right, double threshold)
    {
        var count = 0L;
        var j = right.Length;
        foreach (var sum in left)
        {
            while (j > 0 && sum + right[j - 1] > threshold)
                j--;
            count += j;
        }

        return count;
    }
}
