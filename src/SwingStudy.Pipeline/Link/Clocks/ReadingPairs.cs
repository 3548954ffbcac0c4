namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>Pairs two lists of readings on one clock one to one, in order, leaving out what has no partner.</summary>
internal static class ReadingPairs
{
    /// <summary>Nearest pairs first, none twice, none crossing another.</summary>
    /// <param name="reference">Readings in order of their middles.</param>
    /// <param name="device">The device's readings on the reference clock, in order of their middles.</param>
    /// <param name="tolerance">Largest residual of a pair, seconds.</param>
    /// <returns>Pairs in order of time.</returns>
    public static List<ClockPair> Nearest(ReadOnlySpan<ClockReading> reference, ReadOnlySpan<ClockReading> device, double tolerance)
    {
        var near = Near(reference, device, tolerance);
        near.Sort();
        var (usedReference, usedDevice) = (new bool[reference.Length], new bool[device.Length]);
        var pairs = new List<ClockPair>();
        foreach (var candidate in near)
        {
            var (r, d) = (candidate.Pair.Reference, candidate.Pair.Device);
            if (usedReference[r] || usedDevice[d])
                continue;
            usedReference[r] = usedDevice[d] = true;
            pairs.Add(candidate.Pair);
        }

        pairs.Sort((one, other) => one.Device.CompareTo(other.Device));
        return Uncrossed(pairs);
    }

    /// <summary>The nearest pairs within the jitter, then odd triggers: a record and a moment, both left over, that are within the wider tolerance of each
    /// other and of nothing else left over.</summary>
    public static List<ClockPair> WithLate(ReadOnlySpan<ClockReading> reference, ReadOnlySpan<ClockReading> device, double jitter, double late)
    {
        var pairs = Nearest(reference, device, jitter);
        var (usedReference, usedDevice) = (pairs.Select(pair => pair.Reference).ToHashSet(), pairs.Select(pair => pair.Device).ToHashSet());
        var left = Near(reference, device, late)
            .Where(near => !usedReference.Contains(near.Pair.Reference) && !usedDevice.Contains(near.Pair.Device)).Select(near => near.Pair).ToList();
        var (byReference, byDevice) = (left.CountBy(pair => pair.Reference).ToDictionary(), left.CountBy(pair => pair.Device).ToDictionary());
        pairs.AddRange(left.Where(pair => byReference[pair.Reference] == 1 && byDevice[pair.Device] == 1).Select(pair => pair with { IsLate = true }));
        pairs.Sort((one, other) => one.Device.CompareTo(other.Device));
        return Uncrossed(pairs);
    }

    private static List<NearPair> Near(ReadOnlySpan<ClockReading> reference, ReadOnlySpan<ClockReading> device, double tolerance)
    {
        var near = new List<NearPair>();
        var reach = tolerance + (Widest(reference) / 2) + (Widest(device) / 2);
        var first = 0;
        for (var d = 0; d < device.Length; d++)
        {
            while (first < reference.Length && reference[first].Middle < device[d].Middle - reach)
                first++;
            for (var r = first; r < reference.Length && reference[r].Middle <= device[d].Middle + reach; r++)
            {
                var residual = device[d].After(reference[r]);
                if (Math.Abs(residual) <= tolerance && reference[r].MayBe(device[d]))
                    near.Add(new NearPair(Math.Abs(residual), Math.Abs(device[d].Middle - reference[r].Middle), new ClockPair(r, d, residual)));
            }
        }

        return near;
    }

    private static double Widest(ReadOnlySpan<ClockReading> readings)
    {
        var widest = 0.0;
        foreach (var reading in readings)
            widest = Math.Max(widest, reading.Width);
        return widest;
    }

    /// <summary>Takes out the worse of two pairs that cross until none do.</summary>
    private static List<ClockPair> Uncrossed(List<ClockPair> pairs)
    {
        for (var i = 0; i + 1 < pairs.Count;)
        {
            if (pairs[i].Reference < pairs[i + 1].Reference)
            {
                i++;
                continue;
            }

            pairs.RemoveAt(Math.Abs(pairs[i].ResidualSeconds) > Math.Abs(pairs[i + 1].ResidualSeconds) ? i : i + 1);
            i = Math.Max(0, i - 1);
        }

        return pairs;
    }

    private readonly record struct NearPair(double Residual, double Apart, ClockPair Pair) : IComparable<NearPair>
    {
        public int CompareTo(NearPair other) =>
            (Residual, Apart, Pair.Device, Pair.Reference).CompareTo((other.Residual, other.Apart, other.Pair.Device, other.Pair.Reference));
    }
}
