using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Tests.Chance;

public class Xoshiro256Tests
{
    [Fact]
    public void TheSameSeedGivesTheSameStream()
    {
        var one = new Xoshiro256(42);
        var other = new Xoshiro256(42);
        for (var i = 0; i < 1000; i++)
            Assert.Equal(one.NextBits(), other.NextBits());
    }

    [Fact]
    public void ASplitStreamDependsOnSeedAndNameAloneAndNotOnWhatWasDrawnBefore()
    {
        var fresh = new Xoshiro256(7);
        var used = new Xoshiro256(7);
        used.NextBits();
        Assert.Equal(fresh.Split("P01/ball_speed").NextBits(), used.Split("P01/ball_speed").NextBits());
        Assert.NotEqual(fresh.Split("P01/ball_speed").NextBits(), fresh.Split("P02/ball_speed").NextBits());
    }

    [Fact]
    public void IndicesStayBelowTheBoundAndReachBothEnds()
    {
        var stream = new Xoshiro256(1);
        var seen = new int[6];
        for (var i = 0; i < 60_000; i++)
            seen[stream.NextIndex(6)]++;
        Assert.All(seen, count => Assert.InRange(count, 9_500, 10_500));
    }
}
