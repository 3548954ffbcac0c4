using System.Runtime.CompilerServices;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Random order without allocation.</summary>
internal static class Shuffle
{
    /// <summary>Moves a random choice of <paramref name="count"/> values to the front, each choice equally likely, and returns their sum.</summary>
    /// <remarks>Starts from whatever order the last call left: the choice is uniform all the same. Source: Durstenfeld (1964), CACM 7:420.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double PartialSum(Span<double> values, int count, Xoshiro256 chance)
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            var j = i + chance.NextIndex(values.Length - i);
            (values[i], values[j]) = (values[j], values[i]);
            sum += values[i];
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
