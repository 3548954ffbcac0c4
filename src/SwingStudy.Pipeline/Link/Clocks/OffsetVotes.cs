namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>One offset between two clocks and how many pairs of readings speak for it.</summary>
/// <param name="OffsetSeconds">To add to the device's time.</param>
/// <param name="Votes">Pairs of readings whose difference lies within the window.</param>
internal readonly record struct OffsetVotes(double OffsetSeconds, int Votes)
{
    /// <summary>The offsets with the most votes, each further than a window from the others, most votes first; of equal votes the one nearest to equal clocks.</summary>
    /// <remarks>All pairwise differences are sorted once and a window slides over them: n·m·log(n·m) for n and m readings.</remarks>
    /// <param name="reference">Readings of the reference clock.</param>
    /// <param name="device">Readings of the device's clock.</param>
    /// <param name="windowSeconds">Width of the window.</param>
    /// <param name="most">How many offsets are wanted at most.</param>
    public static IReadOnlyList<OffsetVotes> Of(ReadOnlySpan<ClockReading> reference, ReadOnlySpan<ClockReading> device, double windowSeconds, int most)
    {
        var differences = new List<double>(reference.Length * device.Length);
        foreach (var d in device)
        {
            foreach (var r in reference)
            {
                if (r.MayBe(d))
                    differences.Add(r.Middle - d.Middle);
            }
        }

        var sorted = differences.ToArray();
        Array.Sort(sorted);
        var found = new List<OffsetVotes>();
        while (found.Count < most && Fullest(sorted, windowSeconds, found) is { } next)
            found.Add(next);
        return found;
    }

    private static OffsetVotes? Fullest(double[] sorted, double window, List<OffsetVotes> taken)
    {
        OffsetVotes? best = null;
        var low = 0;
        for (var high = 0; high < sorted.Length; high++)
        {
            while (sorted[high] - sorted[low] > window)
                low++;
            var here = new OffsetVotes(sorted[(low + high) / 2], high - low + 1);
            if ((best is null || here.Exceeds(best.Value)) && !taken.Exists(other => Math.Abs(other.OffsetSeconds - here.OffsetSeconds) <= window))
                best = here;
        }

        return best;
    }

    private bool Exceeds(OffsetVotes other) =>
        Votes > other.Votes || (Votes == other.Votes && Math.Abs(OffsetSeconds) < Math.Abs(other.OffsetSeconds));
}
