using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
    private Vector256<ulong>[]? _lanes;

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

    /// <summary>Fills <paramref name="words"/> with random 32-bit words: the fast way to many draws.</summary>
    /// <remarks>
    /// The words come from four further streams of the same generator side by side, seeded by the SplitMix64 numbers that follow those of this
    /// stream; each step gives the lower and upper half of each stream's 64 bits in turn. Steps are whole: what a call does not need of its last
    /// step is dropped.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Fill(Span<uint> words)
    {
        _lanes ??= Lanes(_seed);
        Vector256<ulong> a = _lanes[0], b = _lanes[1], c = _lanes[2], d = _lanes[3];
        ref var at = ref MemoryMarshal.GetReference(words);
        var i = 0;
        while (i < words.Length)
        {
            var five = b + (b << 2);
            var rotated = (five << 7) | (five >>> 57);
            var bits = (rotated + (rotated << 3)).AsUInt32();
            var shifted = b << 17;
            c ^= a;
            d ^= b;
            b ^= c;
            a ^= d;
            c ^= shifted;
            d = (d << 45) | (d >>> 19);
            if (i + Vector256<uint>.Count <= words.Length)
            {
                bits.StoreUnsafe(ref Unsafe.Add(ref at, i));
                i += Vector256<uint>.Count;
            }
            else
            {
                for (var lane = 0; i < words.Length; i++, lane++)
                    words[i] = bits.GetElement(lane);
            }
        }

        (_lanes[0], _lanes[1], _lanes[2], _lanes[3]) = (a, b, c, d);
    }

    /// <summary>The index in [0, <paramref name="bound"/>) that a random word stands for, without bias beyond 2^-32 · bound.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Index(uint word, int bound) => (int)(((ulong)word * (uint)bound) >> 32);

    private static Vector256<ulong>[] Lanes(ulong seed)
    {
        for (var skipped = 0; skipped < 4; skipped++)
            SplitMix64(ref seed);
        Span<ulong> state = stackalloc ulong[16];
        for (var lane = 0; lane < 4; lane++)
        {
            for (var word = 0; word < 4; word++)
                state[(4 * word) + lane] = SplitMix64(ref seed);
        }

        return [Vector256.Create(state[..4]), Vector256.Create(state[4..8]), Vector256.Create(state[8..12]), Vector256.Create(state[12..])];
    }

    private static ulong SplitMix64(ref ulong x)
    {
        var z = x += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
