using System.Numerics;
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

    [Theory]
    [InlineData(8)]
    [InlineData(24)]
    [InlineData(21)]
    public void FilledWordsAreFourStreamsSideBySideSeededByTheNumbersThatFollow(int count)
    {
        var words = new uint[count];
        new Xoshiro256(9).Fill(words);

        // The generator written plainly, from its definition.
        var seed = 9UL;
        var state = new ulong[20];
        for (var i = 0; i < state.Length; i++)
            state[i] = SplitMix64(ref seed);
        var expected = new List<uint>();
        while (expected.Count < count)
        {
            for (var lane = 0; lane < 4; lane++)
            {
                var bits = Step(state.AsSpan(4 + (4 * lane), 4));
                expected.Add((uint)bits);
                expected.Add((uint)(bits >> 32));
            }
        }

        Assert.Equal(expected.Take(count), words);
    }

    [Fact]
    public void FilledWordsAreUniform()
    {
        var words = new uint[60_000];
        new Xoshiro256(3).Fill(words);
        var seen = new int[6];
        foreach (var word in words)
            seen[Xoshiro256.Index(word, 6)]++;
        Assert.All(seen, count => Assert.InRange(count, 9_500, 10_500));
    }

    private static ulong Step(Span<ulong> s)
    {
        var result = BitOperations.RotateLeft(s[1] * 5, 7) * 9;
        var t = s[1] << 17;
        s[2] ^= s[0];
        s[3] ^= s[1];
        s[1] ^= s[2];
        s[0] ^= s[3];
        s[2] ^= t;
        s[3] = BitOperations.RotateLeft(s[3], 45);
        return result;
    }

    private static ulong SplitMix64(ref ulong x)
    {
        var z = x += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    [Fact]
    public void AWordBecomesAnIndexBelowItsBound()
    {
        Assert.Equal(0, Xoshiro256.Index(0, 60));
        Assert.Equal(59, Xoshiro256.Index(uint.MaxValue, 60));
        Assert.Equal(30, Xoshiro256.Index(1u << 31, 60));
    }
}
