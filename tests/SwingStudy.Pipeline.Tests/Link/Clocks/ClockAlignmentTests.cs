using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Tests.Link.Clocks;

public sealed class ClockAlignmentTests
{
    private static readonly double[] Times = [0, 31, 58, 97, 121, 160, 186, 231, 262, 290, 333, 360];

    [Fact]
    public void OffsetAndDriftAreFoundAcrossMissedAndFalseTriggers()
    {
        // 47.3 s ahead at time 0 and 120 parts in a million fast.
        double[] device = [.. Times.Where((_, i) => i is not (2 or 7)).Append(75.5).Append(210).Order().Select(time => 47.3 + (time * (1 + 120e-6)))];

        var stretch = Assert.Single(Between(Exact(Times), Exact(device)).Stretches);

        Assert.Equal([0, 1, 3, 4, 5, 6, 8, 9, 10, 11], stretch.Pairs.Select(pair => pair.Reference));
        Assert.True(stretch.HasDrift);
        Assert.Equal(-47.3, stretch.Line.OffsetSeconds, 3);
        Assert.Equal(-120e-6 / (1 + 120e-6), stretch.Line.Drift, 8);
        Assert.True(stretch.Confidence >= 0.5, $"confidence {stretch.Confidence}");
    }

    [Fact]
    public void TimesCutToWholeSecondsBoundTheOffsetAndLeaveNoResidual()
    {
        double[] exact = [.. Times.Select((time, i) => time + (i * 83 % 1000 / 1000.0))];

        var stretch = Assert.Single(Between([.. exact.Select(time => new ClockReading(Math.Floor(time), 1))], Exact([.. exact.Select(time => time - 3600)])).Stretches);

        Assert.Equal(Times.Length, stretch.Pairs.Count);
        Assert.All(stretch.Pairs, pair => Assert.Equal(0, pair.ResidualSeconds));
        // Each second bounds the offset; together they leave less than a fifth of one.
        Assert.Equal(3600, stretch.Line.OffsetSeconds, 0.1);
    }

    [Fact]
    public void ALateTriggerIsJoinedAndDoesNotMoveTheClock()
    {
        double[] device = [.. Times.Select((time, i) => time + 5 + (i == 4 ? 0.42 : 0))];

        var stretch = Assert.Single(Between(Exact(Times), Exact(device)).Stretches);

        Assert.Equal(-5, stretch.Line.OffsetSeconds, 4);
        var late = Assert.Single(stretch.Pairs, pair => pair.IsLate);
        Assert.Equal((4, 4), (late.Reference, late.Device));
        Assert.Equal(0.42, late.ResidualSeconds, 3);
    }

    [Fact]
    public void AClockThatWasSetAnewGivesTwoStretches()
    {
        double[] device = [.. Times.Select((time, i) => time + (i < 6 ? 5 : -2400.25))];

        var stretches = Between(Exact(Times), Exact([.. device.Order()])).Stretches;

        Assert.Equal([-5, 2400.25], stretches.Select(stretch => Math.Round(stretch.Line.OffsetSeconds, 4)));
        Assert.Equal([6, 6], stretches.Select(stretch => stretch.Pairs.Count));
    }

    [Fact]
    public void EvenlySpacedSwingsFitInMoreThanOneWayAndAreNotJoined()
    {
        double[] even = [.. Enumerable.Range(0, 12).Select(i => 30.0 * i)];

        var alignment = Between(Exact(even), Exact([.. even.Select(time => time + 5)]));

        Assert.Empty(alignment.Stretches);
        Assert.True(alignment.Doubtful!.Confidence < 0.2);
        Assert.Equal((11, 30), (alignment.Doubtful.RivalPairs, Math.Round(Math.Abs(alignment.Doubtful.RivalSeconds!.Value), 3)));
        Assert.Equal(12, alignment.Doubtful.Pairs.Count);
    }

    [Fact]
    public void ASinglePairProvesNothing() => Assert.Empty(Between(Exact(1), Exact(1)).Stretches);

    [Fact]
    public void NothingToMatchGivesNothing()
    {
        Assert.Equal((0, null), (Between([], Exact(1, 2)).Stretches.Count, Between([], Exact(1, 2)).Doubtful));
        Assert.Equal((0, null), (Between(Exact(1, 2), []).Stretches.Count, Between(Exact(1, 2), []).Doubtful));
    }

    [Fact]
    public void ARecordThatNamesAPlayerIsNotJoinedToAnothers()
    {
        ClockReading[] reference = [.. Times.Select((time, i) => new ClockReading(time, 0, i % 2))];
        ClockReading[] device = [.. Times.Select((time, i) => new ClockReading(time, 0, i == 3 ? 0 : i % 2))];
        var stretch = Assert.Single(Between(reference, device).Stretches);
        Assert.DoesNotContain(stretch.Pairs, pair => pair.Reference == 3);
    }

    [Theory]
    [InlineData(0.0, null, false, 0.995)]
    [InlineData(1.0, null, false, 0.995)]
    [InlineData(0.0, null, true, 0.995)]
    [InlineData(1.0, null, true, 0.995)]
    // Beside the moment at which a clock was set anew, what fits both sides is joined to neither.
    [InlineData(0.0, 0.5, false, 0.99)]
    public void SimulatedSessionsAreJoinedRightOrNotAtAll(double cut, double? restart, bool takesTurns, double leastShare)
    {
        var (right, common, wrong) = (0, 0, 0);
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var played = new SimulatedClocks(seed) { Swings = 24 + (int)(seed % 40), Cut = cut, Restart = restart, TakesTurns = takesTurns }.Play();
            var pairs = Between(played.ReferenceReadings, played.DeviceReadings).Stretches.SelectMany(stretch => stretch.Pairs).ToList();
            var good = pairs.Count(pair => played.Reference[pair.Reference].Id == played.Device[pair.Device].Id);
            (right, common, wrong) = (right + good, common + played.Common, wrong + pairs.Count - good);
        }

        Assert.Equal(0, wrong);
        Assert.True(right >= leastShare * common, $"{right} of {common}");
    }

    [Fact]
    public void ClocksAreFoundWithinFiveMillisecondsAndTenPartsInAMillion()
    {
        // Sixty swings of a device that wavers by 1 to 10 ms: in their middle the standard error is 0.1 to 1.5 ms, of the drift 0.2 to 2.5 parts in a million.
        for (var seed = 1UL; seed <= 40; seed++)
        {
            var played = new SimulatedClocks(seed) { Swings = 60 }.Play();
            var stretch = Assert.Single(Between(played.ReferenceReadings, played.DeviceReadings).Stretches);
            var (offset, drift) = played.Clocks[0];
            var middle = stretch.Pairs.Average(pair => played.Device[pair.Device].Reading.Seconds);
            Assert.Equal((middle - offset) / (1 + drift), stretch.Line.Map(middle), 0.005);
            Assert.Equal(-drift / (1 + drift), stretch.Line.Drift, 10e-6);
        }
    }

    [Fact]
    public void TenThousandRecordsAreJoinedToTheirOwn()
    {
        var played = new SimulatedClocks(7) { Swings = 10_000, Faults = 0.02 }.Play();

        var stretch = Assert.Single(Between(played.ReferenceReadings, played.DeviceReadings).Stretches);

        Assert.All(stretch.Pairs, pair => Assert.Equal(played.Reference[pair.Reference].Id, played.Device[pair.Device].Id));
        Assert.True(stretch.Pairs.Count >= 0.995 * played.Common);
    }

    private static ClockReading[] Exact(params double[] seconds) => [.. seconds.Select(second => new ClockReading(second))];

    private static ClockAlignment Between(ClockReading[] reference, ClockReading[] device) => ClockAlignment.Between(reference, device, new ClockLimits());
}
