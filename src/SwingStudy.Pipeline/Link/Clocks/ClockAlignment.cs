namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>Which records of a device are the same moments as readings of a reference clock, and how the device's clock runs against it.</summary>
/// <remarks>
/// Offsets are voted for by all pairwise differences of times (lists longer than <see cref="ClockLimits.SeedRecords"/> are started from a part and followed), a
/// line of offset and drift is fitted robustly, and records are joined one to one in order, with gaps on either side. What one line leaves unexplained at its
/// ends is tried again by itself: a clock that was set anew gives a further stretch. A match that another offset explains nearly as well is not made.
/// </remarks>
/// <param name="Stretches">Stretches that were made, in order of reference time.</param>
/// <param name="Doubtful">The best that could be found where no stretch was made; null when there is none or nothing pairs.</param>
internal sealed record ClockAlignment(IReadOnlyList<ClockStretch> Stretches, ClockStretch? Doubtful)
{
    /// <summary>Near the end of a stretch a record that another stretch explains as well belongs to neither.</summary>
    private const int EdgeReadings = 3;

    /// <summary>So many records beyond a stretch may be a further one that could not be told.</summary>
    private const int FurtherRecords = 3;

    /// <summary>Matches a device's records to reference readings.</summary>
    /// <param name="reference">Readings of the reference clock, in order of their middles.</param>
    /// <param name="device">Records of the device on its own clock, in order of their middles.</param>
    /// <param name="limits">What is plausible.</param>
    public static ClockAlignment Between(IReadOnlyList<ClockReading> reference, IReadOnlyList<ClockReading> device, ClockLimits limits)
    {
        ClockReading[] references = [.. reference];
        ClockReading[] records = [.. device];
        var stretches = new List<ClockStretch>();
        var whole = new StretchSearch(references, records, limits).Best();
        if (whole is null || !IsSure(whole, limits.LeastPairs, limits))
            return new ClockAlignment([], whole);
        stretches.Add(whole);
        var unsure = new List<ClockStretch>();
        AddBeside(references, records, whole, 0, references.Length, stretches, unsure, limits);
        stretches.Sort((one, other) => one.FirstReference.CompareTo(other.FirstReference));
        return new ClockAlignment(Finished(references, records, stretches, unsure, limits), null);
    }

    private static bool IsSure(ClockStretch stretch, int leastPairs, ClockLimits limits) =>
        stretch.Pairs.Count >= leastPairs && stretch.Confidence >= limits.LeastConfidence;

    /// <summary>Looks for further stretches among the reference readings before and after one; those that are not sure only speak against others.</summary>
    private static void AddBeside(
        ClockReading[] reference, ClockReading[] device, ClockStretch known, int from, int to, List<ClockStretch> stretches, List<ClockStretch> unsure, ClockLimits limits)
    {
        foreach (var (first, end) in new[] { (from, known.FirstReference), (known.LastReference + 1, to) })
        {
            var taken = stretches.SelectMany(stretch => stretch.Pairs).Select(pair => pair.Device).ToHashSet();
            int[] left = [.. Enumerable.Range(0, device.Length).Where(i => !taken.Contains(i))];
            if (new StretchSearch(reference[first..end], [.. left.Select(i => device[i])], limits).Best() is not { } found || found.Pairs.Count < limits.LeastPairs)
                continue;
            var further = found with
            {
                Pairs = [.. found.Pairs.Select(pair => pair with { Reference = pair.Reference + first, Device = left[pair.Device] })],
                FirstDevice = left[found.FirstDevice],
                LastDevice = left[found.LastDevice],
                FirstReference = found.FirstReference + first,
                LastReference = found.LastReference + first,
            };
            if (found.Pairs.Count < limits.LeastShareOfFurtherStretch * (found.LastDevice - found.FirstDevice + 1))
                continue;
            if (IsSure(found, limits.LeastPairsOfFurtherStretch, limits))
            {
                stretches.Add(further);
                AddBeside(reference, device, further, first, end, stretches, unsure, limits);
            }
            else
            {
                unsure.Add(further);
            }
        }
    }

    /// <summary>Joins odd triggers too, each within the reach of its stretch, and leaves out records near a border that fit both sides.</summary>
    private static List<ClockStretch> Finished(
        ClockReading[] reference, ClockReading[] device, List<ClockStretch> stretches, List<ClockStretch> unsure, ClockLimits limits)
    {
        var finished = new List<ClockStretch>();
        for (var i = 0; i < stretches.Count; i++)
        {
            var own = stretches[i];
            var others = stretches.Where((_, other) => other != i).ToList();
            var elsewhere = others.SelectMany(other => other.Pairs).Select(pair => pair.Device).ToHashSet();
            var from = i == 0 ? 0 : own.FirstReference;
            var to = i == stretches.Count - 1 ? reference.Length : own.LastReference + 1;
            int[] left = [.. Enumerable.Range(0, device.Length).Where(record => !elsewhere.Contains(record))];
            var mapped = Array.ConvertAll(left, record => own.Line.Map(device[record]));
            List<ClockPair> pairs = [.. ReadingPairs.WithLate(reference.AsSpan(from..to), mapped, own.JitterSeconds, Math.Max(limits.LateSeconds, own.JitterSeconds))
                .Select(pair => pair with { Reference = pair.Reference + from, Device = left[pair.Device] })];
            pairs.RemoveAll(pair => others.Concat(unsure).Any(other => FitsToo(reference, device, pair, own, other)) || (pair.IsLate && IsBeyond(pair, own, device.Length)));
            finished.Add(own with { Pairs = pairs });
        }

        return finished;
    }

    /// <summary>Whether an odd trigger lies where the line may no longer hold: outside the run, with more records beyond it that the line does not explain.</summary>
    private static bool IsBeyond(ClockPair pair, ClockStretch own, int records) =>
        (pair.Reference < own.FirstReference && own.FirstDevice >= FurtherRecords) || (pair.Reference > own.LastReference && records - 1 - own.LastDevice >= FurtherRecords);

    /// <summary>Whether another stretch explains a record as well, where both may hold: near the end of a stretch, or among the other's records.</summary>
    private static bool FitsToo(ClockReading[] reference, ClockReading[] device, ClockPair pair, ClockStretch own, ClockStretch other)
    {
        var isNearEnd = Math.Min(pair.Reference - own.FirstReference, own.LastReference - pair.Reference) < EdgeReadings;
        var isAmongOthers = pair.Device >= other.FirstDevice - EdgeReadings && pair.Device <= other.LastDevice + EdgeReadings;
        if (!isNearEnd && !isAmongOthers)
            return false;
        var (from, to) = (Math.Max(0, other.FirstReference - EdgeReadings), Math.Min(reference.Length, other.LastReference + 1 + EdgeReadings));
        var mapped = other.Line.Map(device[pair.Device]);
        return Array.Exists(reference[from..to], reading => reading.MayBe(mapped) && Math.Abs(mapped.After(reading)) <= other.JitterSeconds);
    }
}
