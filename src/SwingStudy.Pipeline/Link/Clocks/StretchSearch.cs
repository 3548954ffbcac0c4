namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>Finds the stretch of a device's clock that explains most of some records by some reference readings.</summary>
/// <param name="reference">Reference readings in order of time.</param>
/// <param name="device">The device's records on its own clock, in order of time.</param>
/// <param name="limits">What is plausible.</param>
internal sealed class StretchSearch(ClockReading[] reference, ClockReading[] device, ClockLimits limits)
{
    private const int Candidates = 6;
    private const int Refinements = 8;

    /// <summary>Where in a long list a start is looked for, as a share of it: where clocks are set anew is not known.</summary>
    private static readonly double[] SeedPlaces = [0.5, 0.25, 0.75, 0, 1, 0.375, 0.625, 0.125];

    /// <summary>So many records are compared with all reference readings at once; of longer lists a part is, and followed.</summary>
    private readonly int _wholeRecords = limits.SeedRecords * 3 / 2;

    /// <summary>The best stretch; null when nothing pairs. Positions are those of the lists given.</summary>
    public ClockStretch? Best()
    {
        if (reference.Length == 0 || device.Length == 0)
            return null;
        Start? best = null;
        foreach (var (from, to) in SeedRanges())
        {
            if (StartOf(from, to) is not { } start)
                continue;
            if (best is null || start.Confidence > best.Confidence)
                best = start;
            if (start.Confidence >= limits.LeastConfidence && start.Pairs >= 0.4 * (to - from))
                break;
        }

        return best is null ? null : Followed(best);
    }

    /// <summary>All records where they are few; else runs of neighbours, the middle one first.</summary>
    private IEnumerable<(int From, int To)> SeedRanges()
    {
        if (device.Length <= _wholeRecords)
            return [(0, device.Length)];
        var room = device.Length - limits.SeedRecords;
        return SeedPlaces.Select(share => (int)(share * room)).Distinct().Select(from => (from, from + limits.SeedRecords));
    }

    private Start? StartOf(int from, int to)
    {
        var records = device.AsSpan(from, to - from);
        var window = (2 * limits.JitterSeconds) + Widest(reference) + Widest(records) + (limits.MostDrift * (records[^1].Middle - records[0].Middle));
        (ClockLineFit Fit, double Jitter, List<ClockPair> Pairs)? best = null;
        foreach (var candidate in OffsetVotes.Of(reference, records, window, Candidates))
        {
            var refined = Refined(from, to, new ClockLine(candidate.OffsetSeconds, 0, records[0].Middle), window / 2);
            if (refined.Pairs.Count > 0 && (best is not { } known || IsBetter(refined.Pairs, known.Pairs)))
                best = refined;
        }

        if (best is not { } found)
            return null;
        var rival = Rival(from, to, found.Fit.Line, found.Jitter);
        return new Start(from, to, found.Fit, found.Jitter, found.Pairs.Count, rival.Pairs, rival.Seconds);
    }

    private static bool IsBetter(List<ClockPair> one, List<ClockPair> other) =>
        one.Count > other.Count || (one.Count == other.Count && one.Sum(pair => Math.Abs(pair.ResidualSeconds)) < other.Sum(pair => Math.Abs(pair.ResidualSeconds)));

    /// <summary>Pairs and line in turn, with less and less tolerance, until nothing changes.</summary>
    private (ClockLineFit Fit, double Jitter, List<ClockPair> Pairs) Refined(int from, int to, ClockLine line, double tolerance)
    {
        var fit = new ClockLineFit(line, 0, false, double.PositiveInfinity);
        var pairs = Paired(from, to, line, tolerance);
        for (var round = 0; round < Refinements && pairs.Count > 0; round++)
        {
            fit = ClockLineFit.Of(reference, device, pairs, limits);
            var next = Paired(from, to, fit.Line, tolerance = Math.Min(tolerance, Jitter(fit)));
            if (next.SequenceEqual(pairs))
                break;
            pairs = next;
        }

        return (fit, Math.Min(tolerance, Jitter(fit)), pairs);
    }

    private double Jitter(ClockLineFit fit) => Math.Clamp(4 * fit.SpreadSeconds, limits.JitterSeconds, limits.LateSeconds);

    /// <summary>Pairs of some records on a line, with positions among all records.</summary>
    private List<ClockPair> Paired(int from, int to, ClockLine line, double tolerance)
    {
        var pairs = ReadingPairs.Nearest(reference, Mapped(from, to, line), tolerance);
        for (var i = 0; i < pairs.Count && from > 0; i++)
            pairs[i] = pairs[i] with { Device = pairs[i].Device + from };
        return pairs;
    }

    private ClockReading[] Mapped(int from, int to, ClockLine line)
    {
        var mapped = new ClockReading[to - from];
        for (var i = from; i < to; i++)
            mapped[i - from] = line.Map(device[i]);
        return mapped;
    }

    /// <summary>The most pairs that the same records make at another offset.</summary>
    private (int Pairs, double? Seconds) Rival(int from, int to, ClockLine line, double jitter)
    {
        var mapped = Mapped(from, to, line);
        var window = (2 * jitter) + Widest(reference) + Widest(mapped);
        var (most, at) = (0, (double?)null);
        // One more than wanted: the line itself is among them.
        foreach (var candidate in OffsetVotes.Of(reference, mapped, window, Candidates + 1).Where(candidate => Math.Abs(candidate.OffsetSeconds) > window))
        {
            var moved = Array.ConvertAll(mapped, reading => reading.Moved(candidate.OffsetSeconds));
            var pairs = ReadingPairs.Nearest(reference, moved, jitter).Count;
            if (pairs > most)
                (most, at) = (pairs, candidate.OffsetSeconds);
        }

        return (most, at);
    }

    /// <summary>Follows the line from where it was found to both sides, twice as far each time, as far as records keep matching.</summary>
    private ClockStretch Followed(Start start)
    {
        var (from, to, fit, jitter) = (start.From, start.To, start.Fit, start.Jitter);
        while (true)
        {
            var (pairs, run) = Within(from, to, fit.Line, jitter);
            if (pairs.Count == 0)
                pairs = Paired(from, to, fit.Line, jitter);
            fit = ClockLineFit.Of(reference, device, pairs, limits);
            jitter = Jitter(fit);
            var (first, last) = (pairs.Min(pair => pair.Device), pairs.Max(pair => pair.Device));
            var more = Math.Max(limits.SeedRecords / 2, last - first);
            var (nextFrom, nextTo) = (Math.Max(0, first - more), Math.Min(device.Length, last + 1 + more));
            if (nextFrom >= from && nextTo <= to)
                return Finished(from, to, fit, jitter, start);
            (from, to) = (Math.Min(from, nextFrom), Math.Max(to, nextTo));
        }
    }

    private ClockStretch Finished(int from, int to, ClockLineFit fit, double jitter, Start start)
    {
        var (pairs, run) = Within(from, to, fit.Line, jitter);
        for (var round = 0; round < Refinements; round++)
        {
            fit = ClockLineFit.Of(reference, device, pairs, limits);
            jitter = Jitter(fit);
            var next = Within(from, to, fit.Line, jitter);
            if (next.Pairs.SequenceEqual(pairs))
                break;
            (pairs, run) = next;
        }

        var first = pairs.Min(pair => pair.Device);
        var confidence = start.Confidence;
        var (rivalPairs, rivalSeconds) = (start.RivalPairs, start.RivalSeconds);
        if (to - from <= _wholeRecords)
        {
            // What other offsets would make of the records on this line: those on another stretch speak for no rival.
            var last = pairs.Max(pair => pair.Device);
            (rivalPairs, rivalSeconds) = Rival(first, last + 1, fit.Line, jitter);
            confidence = Start.ConfidenceOf(pairs.Count, rivalPairs);
        }

        return new ClockStretch(fit.Line.AnchoredAt(device[first].Seconds), fit.HasDrift, jitter, pairs, first, pairs.Max(pair => pair.Device),
            run.First, run.Last, rivalPairs, rivalSeconds, confidence) { DriftError = fit.DriftError };
    }

    /// <summary>The pairs within the run of reference readings that keeps matching.</summary>
    private (List<ClockPair> Pairs, DenseRun Run) Within(int from, int to, ClockLine line, double tolerance)
    {
        var pairs = Paired(from, to, line, tolerance);
        if (pairs.Count == 0)
            return (pairs, default);
        var (lowest, highest) = (pairs.Min(pair => pair.Reference), pairs.Max(pair => pair.Reference));
        var matched = new bool[highest - lowest + 1];
        foreach (var pair in pairs)
            matched[pair.Reference - lowest] = true;
        var run = DenseRun.Of(matched, to - from);
        run = new DenseRun(run.First + lowest, run.Last + lowest);
        pairs.RemoveAll(pair => !run.Contains(pair.Reference));
        return (pairs, run);
    }

    private static double Widest(ReadOnlySpan<ClockReading> readings)
    {
        var widest = 0.0;
        foreach (var reading in readings)
            widest = Math.Max(widest, reading.Width);
        return widest;
    }

    /// <summary>A line that explains a run of records, before it is followed further.</summary>
    private sealed record Start(int From, int To, ClockLineFit Fit, double Jitter, int Pairs, int RivalPairs, double? RivalSeconds)
    {
        public double Confidence => ConfidenceOf(Pairs, RivalPairs);

        public static double ConfidenceOf(int pairs, int rivals) => Math.Max(0, (double)(pairs - Math.Max(1, rivals)) / pairs);
    }
}
