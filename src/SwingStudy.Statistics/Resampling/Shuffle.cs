using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Random order without allocation.</summary>
public static class Shuffle
{
    /// <summary>Moves a random choice of values to the front, each choice equally likely, and returns their sum.</summary>
    /// <remarks>Starts from whatever order the last call left: the choice is uniform all the same. Source: Durstenfeld (1964), CACM 7:420.</remarks>
    /// <param name="values">The values, reordered.</param>
    /// <param name="words">One random word for each value to choose.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double PartialSum(Span<double> values, ReadOnlySpan<uint> words)
    {
        var sum = 0.0;
        ref var at = ref MemoryMarshal.GetReference(values);
        for (var i = 0; i < words.Length && i < values.Length; i++)
        {
            ref var chosen = ref Unsafe.Add(ref at, i + Xoshiro256.Index(words[i], values.Length - i));
            var value = chosen;
            chosen = Unsafe.Add(ref at, i);
            Unsafe.Add(ref at, i) = value;
            sum += value;
        }

        return sum;
    }

    /// <summary>Puts all items into random order.</summary>
    public static void All<T>(Span<T> items, Xoshiro256 chance)
    {
        for (var i = items.Length - 1; i > 0; i--)
        {
            var j = chance.NextIndex(i + 1);
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}
