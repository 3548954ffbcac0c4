using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>Tells how the clock of a device ran during a stay.</summary>
internal static class StayClocks
{
    /// <summary>The rows of one device: one a stretch, or one that says that no clock was made.</summary>
    public static IEnumerable<ClockRow> Of(
        PlayerSession session, AlignedDevice device, StayTimeline timeline, long originMillis, Func<SeenMoment, bool> isSwing)
    {
        var reference = timeline.Devices[0].Records.Source;
        var records = device.Records.Records;
        if (device.Alignment is not { } alignment)
        {
            var counts = Count(timeline, device, isSwing, double.NegativeInfinity, double.PositiveInfinity);
            return
            [
                new ClockRow(session, device.Records, reference, ClockRow.Reference)
                {
                    FromMillis = Millis(records[0]),
                    ToMillis = Millis(records[^1]),
                    Line = ClockLine.Same,
                    ResidualRms = 0,
                    Matched = counts.Matched,
                    Missed = counts.Missed,
                    Extra = counts.Extra,
                    Confidence = 1,
                },
            ];
        }

        List<DeviceRecord> told = [.. records.Where(record => !record.IsGuess)];
        return alignment.Stretches.Count > 0
            ? alignment.Stretches.Select(stretch => Made(stretch, told))
            : [NotMade(alignment.Doubtful, records)];

        ClockRow Made(ClockStretch stretch, List<DeviceRecord> own)
        {
            var (first, last) = (own[stretch.FirstDevice], own[stretch.LastDevice]);
            var counts = Count(timeline, device, isSwing, stretch.Line.Map(first.Reading.Seconds), stretch.Line.Map(last.Reading.Seconds + last.Reading.Width));
            return Row(stretch, Millis(first), Millis(last), stretch.HasDrift ? ClockRow.OffsetAndDrift : ClockRow.Offset) with
            {
                Matched = counts.Matched,
                Missed = counts.Missed,
                Extra = counts.Extra,
            };
        }

        ClockRow NotMade(ClockStretch? doubtful, IReadOnlyList<DeviceRecord> own) => doubtful is null
            ? new ClockRow(session, device.Records, reference, ClockRow.NotMade)
            {
                FromMillis = Millis(own[0]),
                ToMillis = Millis(own[^1]),
                Line = new ClockLine(double.NaN, double.NaN, 0),
                Confidence = 0,
            }
            : Row(doubtful, Millis(own[0]), Millis(own[^1]), ClockRow.NotMade);

        ClockRow Row(ClockStretch stretch, long from, long to, string method) => new(session, device.Records, reference, method)
        {
            FromMillis = from,
            ToMillis = to,
            Line = stretch.Line,
            ResidualRms = stretch.ResidualRms,
            Confidence = stretch.Confidence,
            RivalSeconds = stretch.RivalSeconds,
            RivalMatched = stretch.RivalPairs,
        };

        long Millis(DeviceRecord record) => originMillis + (long)Math.Round(record.Reading.Seconds * 1000);
    }

    private static (int Matched, int Missed, int Extra) Count(StayTimeline timeline, AlignedDevice device, Func<SeenMoment, bool> isSwing, double from, double to)
    {
        var (matched, missed, extra) = (0, 0, 0);
        foreach (var moment in timeline.Moments.Where(moment => moment.Reading.Middle >= from - 1 && moment.Reading.Middle <= to + 1))
        {
            var isSeen = moment.Records.Any(record => record.Device == device.Records);
            if (isSwing(moment))
                (matched, missed) = isSeen ? (matched + 1, missed) : (matched, missed + 1);
            else if (isSeen)
                extra++;
        }

        return (matched, missed, extra);
    }
}
