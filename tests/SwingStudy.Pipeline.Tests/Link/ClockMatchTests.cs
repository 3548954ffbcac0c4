using CsCheck;
using SwingStudy.Pipeline.Link;

namespace SwingStudy.Pipeline.Tests.Link;

public sealed class ClockMatchTests
{
    private static readonly long[] Reference = [0, 31_000, 58_000, 97_000, 121_000, 160_000, 186_000, 231_000, 262_000, 290_000, 333_000, 360_000];

    [Fact]
    public void AnOffsetIsFoundAcrossMissedAndFalseTriggers()
    {
        long[] device = [.. Reference.Where((_, i) => i is not (2 or 7)).Append(75_500).Append(210_000).Order().Select(t => t + 47_300)];

        var match = ClockMatch.Between(Reference, device, 1500);

        Assert.Equal(47_300, match.OffsetMillis);
        Assert.Equal([0, 1, 3, 4, 5, 6, 8, 9, 10, 11], match.Pairs.Select(pair => pair.Reference));
        Assert.All(match.Pairs, pair => Assert.Equal(0, pair.ResidualMillis));
        Assert.True(match.Confidence >= 0.5, $"confidence {match.Confidence}");
    }

    [Fact]
    public void TimesCutToWholeSecondsStillMatch()
    {
        long[] exact = [.. Reference.Select((t, i) => t + (i * 83 % 1000))];
        var match = ClockMatch.Between([.. exact.Select(t => t / 1000 * 1000)], [.. exact.Select(t => t - 3_600_000)], 1500);
        Assert.Equal(Reference.Length, match.Pairs.Count);
    }

    [Fact]
    public void EvenlySpacedSwingsGiveNoConfidence()
    {
        long[] even = [.. Enumerable.Range(0, 12).Select(i => 30_000L * i)];
        var match = ClockMatch.Between(even, [.. even.Select(t => t + 5_000)], 1500);
        Assert.True(match.Confidence < 0.2, $"confidence {match.Confidence}");
    }

    [Fact]
    public void ASinglePairProvesNothing() => Assert.Equal(0, ClockMatch.Between([1000], [1000], 1500).Confidence);

    [Fact]
    public void NothingToMatchGivesNoPairs()
    {
        Assert.Empty(ClockMatch.Between([], [1, 2], 1500).Pairs);
        Assert.Empty(ClockMatch.Between([1, 2], [], 1500).Pairs);
    }

    [Fact]
    public void SettingAClockForwardShiftsTheOffsetAndNothingElse() =>
        Gen.Select(Gen.Long[0, 600_000].Array[3, 20], Gen.Long[0, 600_000].Array[3, 20], Gen.Long[-10_000_000, 10_000_000]).Sample((reference, device, shift) =>
        {
            Array.Sort(reference);
            Array.Sort(device);
            // Equal votes go to the offset nearest to equal clocks, which a shift may change: only clear matches are compared.
            var (plain, shifted) = (ClockMatch.Between(reference, device, 1500), ClockMatch.Between(reference, [.. device.Select(t => t + shift)], 1500));
            if (plain.Confidence > 0 && shifted.Confidence > 0 && plain.Pairs.Count > 4)
            {
                Assert.Equal(plain.OffsetMillis + shift, shifted.OffsetMillis);
                Assert.Equal(plain.Pairs, shifted.Pairs);
            }
        });

    [Fact]
    public void PairsAreOneToOneInOrderAndWithinTolerance() =>
        Gen.Select(Gen.Long[0, 300_000].Array[0, 25], Gen.Long[0, 300_000].Array[0, 25]).Sample((reference, device) =>
        {
            Array.Sort(reference);
            Array.Sort(device);
            var match = ClockMatch.Between(reference, device, 1500);
            Assert.All(match.Pairs.Zip(match.Pairs.Skip(1)), pair => Assert.True(pair.First.Reference < pair.Second.Reference && pair.First.Device < pair.Second.Device));
            Assert.All(match.Pairs, pair => Assert.True(Math.Abs(pair.ResidualMillis) <= 1500));
            Assert.InRange(match.Confidence, 0, 1);
        });
}
