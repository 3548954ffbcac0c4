using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>The moments of a stay on one clock, from the records of all devices.</summary>
/// <remarks>
/// The device that tells impact best gives the clock, if it saw at least half as much as the busiest. The others are aligned to the moments known so far, the most
/// precise first, and what they saw alone becomes a moment too. Guessed times come last: they join moments, they do not make clocks.
/// </remarks>
internal sealed class StayTimeline
{
    private const double GuessJitterSeconds = 0.15;
    private readonly ClockLimits _limits;
    private readonly Func<DeviceRecords, DeviceRecords, ClockDrift?> _drifts;
    private readonly List<SeenMoment> _moments = [];
    private readonly List<AlignedDevice> _devices = [];

    private StayTimeline(ClockLimits limits, Func<DeviceRecords, DeviceRecords, ClockDrift?> drifts) => (_limits, _drifts) = (limits, drifts);

    /// <summary>Moments in order of time.</summary>
    public IReadOnlyList<SeenMoment> Moments => _moments;

    /// <summary>Devices, the reference first.</summary>
    public IReadOnlyList<AlignedDevice> Devices => _devices;

    /// <summary>Builds it.</summary>
    /// <param name="devices">Devices with their records.</param>
    /// <param name="settings">Settings.</param>
    /// <param name="drifts">What is known of a device's drift against the reference from elsewhere.</param>
    public static StayTimeline Of(IReadOnlyList<DeviceRecords> devices, LinkSettings settings, Func<DeviceRecords, DeviceRecords, ClockDrift?> drifts)
    {
        var timeline = new StayTimeline(settings.Limits, drifts);
        if (devices.Count == 0)
            return timeline;
        var busiest = devices.Max(device => device.Told);
        var ordered = devices.OrderBy(device => device.Precision).ThenByDescending(device => device.Told).ThenBy(device => settings.Rank(device.Source))
            .ThenBy(device => device.Source, StringComparer.Ordinal).ThenBy(device => device.Device, StringComparer.Ordinal).ToList();
        var reference = ordered.First(device => 2 * device.Told >= busiest);
        timeline._devices.Add(new AlignedDevice(reference, null));
        timeline._moments.AddRange(reference.Records.Where(record => !record.IsGuess)
            .Select(record => new SeenMoment(new SeenRecord(reference, record, record.Reading, ClockLine.Same, false, 1))));
        foreach (var device in ordered.Where(device => device != reference))
            timeline.Align(device);
        foreach (var device in timeline._devices.ToList())
            timeline.AddGuesses(device);
        return timeline;
    }

    private void Align(DeviceRecords device)
    {
        List<DeviceRecord> told = [.. device.Records.Where(record => !record.IsGuess)];
        var alignment = ClockAlignment.Between([.. _moments.Select(moment => moment.Reading)], [.. told.Select(record => record.Reading)], _limits with { Expected = _drifts(device, _devices[0].Records) });
        var aligned = new AlignedDevice(device, alignment) { Candidates = Candidates(alignment.Doubtful, told) };
        _devices.Add(aligned);
        var joined = new HashSet<int>();
        var alone = new List<SeenMoment>();
        foreach (var stretch in alignment.Stretches)
        {
            foreach (var pair in stretch.Pairs)
            {
                joined.Add(pair.Device);
                _moments[pair.Reference].Add(Seen(told[pair.Device], stretch, pair.IsLate));
            }
        }

        for (var i = 0; i < told.Count; i++)
        {
            if (!joined.Contains(i) && aligned.StretchAt(i) is { } stretch)
                alone.Add(new SeenMoment(Seen(told[i], stretch, false)));
        }

        Insert(alone);

        SeenRecord Seen(DeviceRecord record, ClockStretch stretch, bool isLate) =>
            new(device, record, stretch.Line.Map(record.Reading), stretch.Line, isLate, stretch.Confidence);
    }

    private Dictionary<Capture, (Capture With, double Residual)> Candidates(ClockStretch? doubtful, List<DeviceRecord> told) =>
        doubtful is null ? [] : doubtful.Pairs.ToDictionary(pair => told[pair.Device].Capture, pair => (_moments[pair.Reference].Definer.Record.Capture, pair.ResidualSeconds));

    private void AddGuesses(AlignedDevice device)
    {
        var guesses = new List<SeenRecord>();
        foreach (var record in device.Records.Records.Where(record => record.IsGuess))
        {
            if (device.LineFor(record.Reading.Seconds) is { } line)
                guesses.Add(new SeenRecord(device.Records, record, line.Line.Map(record.Reading), line.Line, false, line.Confidence));
        }

        if (guesses.Count == 0)
            return;
        guesses.Sort((one, other) => one.Mapped.Middle.CompareTo(other.Mapped.Middle));
        var open = _moments.Where(moment => moment.Records.All(record => record.Device != device.Records)).ToList();
        var pairs = ReadingPairs.WithLate(
            [.. open.Select(moment => moment.Reading)], [.. guesses.Select(guess => guess.Mapped)], GuessJitterSeconds, _limits.LateSeconds);
        foreach (var pair in pairs)
            open[pair.Reference].Add(guesses[pair.Device] with { IsLate = pair.IsLate });
        var joined = pairs.Select(pair => pair.Device).ToHashSet();
        Insert(guesses.Where((_, i) => !joined.Contains(i)).Select(guess => new SeenMoment(guess)));
    }

    private void Insert(IEnumerable<SeenMoment> moments)
    {
        _moments.AddRange(moments);
        var ordered = _moments.OrderBy(moment => moment.Reading.Middle).ThenBy(moment => moment.Definer.Record.Capture.Id, StringComparer.Ordinal).ToList();
        _moments.Clear();
        _moments.AddRange(ordered);
    }
}
