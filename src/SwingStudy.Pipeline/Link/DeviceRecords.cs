using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>One device's records of swings during a stay, with the time each gives for impact on the device's own clock.</summary>
/// <remarks>
/// A device that tells impact in most records is taken at its word; where a record of it does not, impact is guessed at the usual time after the first
/// sample, and the guess is joined to swings but fits no clock. A device that never tells impact is taken by the start of its recordings. Times that are all
/// whole seconds (or tenths, or minutes) were cut: the moment lies within the second that follows.
/// </remarks>
internal sealed class DeviceRecords
{
    private const double StartWidth = 0.4;
    private const int FewestToTell = 3;
    private static readonly long[] Cuts = [60_000, 1000, 100];

    private DeviceRecords(string source, string device, TimePrecision precision, IReadOnlyList<DeviceRecord> records, double? usualDelay) =>
        (Source, Device, Precision, Records, UsualDelaySeconds) = (source, device, precision, records, usualDelay);

    /// <summary>Its source.</summary>
    public string Source { get; }

    /// <summary>The very device.</summary>
    public string Device { get; }

    /// <summary>How well it tells impact.</summary>
    public TimePrecision Precision { get; }

    /// <summary>Its records, in order of time.</summary>
    public IReadOnlyList<DeviceRecord> Records { get; }

    /// <summary>Usual time from the first sample to impact; null for a device that is taken by the start of its recordings.</summary>
    public double? UsualDelaySeconds { get; }

    /// <summary>Records whose time is more than a guess.</summary>
    public int Told => Records.Count(record => !record.IsGuess);

    /// <summary>The records of one device.</summary>
    /// <param name="captures">Its captures, at least one, in order of time.</param>
    /// <param name="originMillis">Time from which seconds are counted.</param>
    /// <param name="whoOf">The number of a player.</param>
    public static DeviceRecords Of(IReadOnlyList<Capture> captures, long originMillis, Func<string?, int> whoOf)
    {
        var told = captures.Where(capture => capture.HasStruck).ToList();
        var isTold = told.Count == captures.Count || (told.Count >= FewestToTell && 2 * told.Count >= captures.Count);
        var delays = told.Where(capture => HasStart(capture)).Select(capture => (capture.StruckMillis - capture.RecordedMillis) / 1000.0).Order().ToList();
        double? usual = isTold && delays.Count > 0 ? (delays[(delays.Count - 1) / 2] + delays[delays.Count / 2]) / 2 : null;
        var cut = CutOf([.. captures.Select(capture => HasStart(capture) ? capture.RecordedMillis : capture.StruckMillis)]) / 1000.0;
        var width = isTold ? cut : Math.Max(cut, StartWidth);
        var precision = width > 0 ? TimePrecision.Coarse
            : delays.Count >= FewestToTell && delays[^1] - delays[0] > 0.001 ? TimePrecision.Measured
            : TimePrecision.Fine;
        var records = captures.Select(capture =>
        {
            var isGuess = isTold && !capture.HasStruck;
            var millis = isTold && capture.HasStruck ? capture.StruckMillis : HasStart(capture) ? capture.RecordedMillis : capture.StruckMillis;
            return new DeviceRecord(capture, new ClockReading(((millis - originMillis) / 1000.0) + (isGuess ? usual ?? 0 : 0), width, whoOf(capture.Participant)), isGuess);
        });
        return new DeviceRecords(captures[0].Source, captures[0].Device, precision, [.. records.OrderBy(record => record.Reading.Seconds)], usual);
    }

    private static bool HasStart(Capture capture) => capture.RecordedMillis != Domain.Tables.InstantColumn.MissingMillis;

    /// <summary>Milliseconds to which all times were cut; 0 when they were not.</summary>
    private static long CutOf(long[] millis) =>
        Cuts.FirstOrDefault(cut => (cut <= 1000 || millis.Length >= FewestToTell) && millis.All(time => time % cut == 0));
}
