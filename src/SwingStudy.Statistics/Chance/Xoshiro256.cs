using System.Numerics;
using System.Runtime.CompilerServices;

namespace SwingStudy.Statistics.Chance;

/// <summary>The pseudo-random generator xoshiro256**, seeded through SplitMix64: the same stream on every machine.</summary>
/// <remarks>
/// Chance is always passed in. A stream is split by name (participant, outcome) with <see cref="Split"/>, so that neither order nor
/// thread count changes a result. Period 2^256 − 1. Not for secrets.
/// Source: Blackman and Vigna (2021), Scrambled linear pseudorandom number generators, ACM TOMS 47(4), art. 36.
/// </remarks>
public sealed class Xoshiro256
{
    private readonly ulong _seed;
    private ulong _a, _b, _c, _d;

    /// <summary>A stream that depends on <paramref name="seed"/> alone.</summary>
    public Xoshiro256(ulong seed)
    {
        _seed = seed;
        _a = SplitMix64(ref seed);
        _b = SplitMix64(ref seed);
        _c = SplitMix64(ref seed);
        _d = SplitMix64(ref seed);
    }

    /// <summary>An independent stream for one named part of the work; the state of this stream is neither read nor changed.</summary>
    /// <param name="name">For instance <c>"P01/club_head_speed"</c>.</param>
    public Xoshiro256 Split(string name)
    {
        var hash = 14695981039346656037UL;
        foreach (var character in name)
            hash = (hash ^ character) * 1099511628211UL;
        var mixed = _seed ^ hash;
        return new Xoshiro256(SplitMix64(ref mixed));
    }

    /// <summary>The next 64 random bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong NextBits()
    {
        var result = BitOperations.RotateLeft(_b * 5, 7) * 9;
        var shifted = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= shifted;
        _d = BitOperations.RotateLeft(_d, 45);
        return result;
    }

    /// <summary>A uniform number in [0, 1) with 53 random bits.</summary>
    public double NextUnit() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A uniform integer in [0, <paramref name="bound"/>), without bias beyond 2^-64 · bound.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int NextIndex(int bound) => (int)Math.BigMul(NextBits(), (ulong)(uint)bound, out _);

    private static ulong SplitMix64(ref ulong x)
    {
        var z = x += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
