using System.Numerics;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>The distinct numbers of a column in order of appearance, told apart bit by bit, and the place of each row's number among them.</summary>
internal sealed class DistinctNumbers
{
    private const ulong Scatter = 0x9E3779B97F4A7C15;
    private readonly double[] _distinct;
    private readonly int[] _slots;
    private readonly int _shift;

    private DistinctNumbers(int most)
    {
        _distinct = new double[most];
        var size = BitOperations.RoundUpToPowerOf2((uint)(most * 2) + 2);
        _slots = new int[size];
        _shift = 64 - BitOperations.Log2(size);
    }

    /// <summary>How many differ.</summary>
    internal int Count { get; private set; }

    /// <summary>The distinct numbers.</summary>
    internal ReadOnlySpan<double> Values => _distinct.AsSpan(0, Count);

    /// <summary>Finds the distinct numbers of a column.</summary>
    /// <param name="values">The column; NaN where missing.</param>
    /// <param name="most">More than these are not worth it.</param>
    /// <param name="places">Filled with the place of each present number.</param>
    /// <param name="present">How many are present.</param>
    /// <returns>Null when there are more than <paramref name="most"/>.</returns>
    internal static DistinctNumbers? Of(ReadOnlySpan<double> values, int most, Span<int> places, out int present)
    {
        var distinct = new DistinctNumbers(most);
        present = 0;
        foreach (var value in values)
        {
            if (double.IsNaN(value))
                continue;
            var place = distinct.Place(value);
            if (place < 0)
                return null;
            places[present++] = place;
        }

        return distinct;
    }

    private int Place(double value)
    {
        var bits = BitConverter.DoubleToUInt64Bits(value);
        var slot = (int)((bits * Scatter) >> _shift);
        for (; _slots[slot] != 0; slot = (slot + 1) & (_slots.Length - 1))
        {
            var place = _slots[slot] - 1;
            if (BitConverter.DoubleToUInt64Bits(_distinct[place]) == bits)
                return place;
        }

        if (Count == _distinct.Length)
            return -1;
        _distinct[Count] = value;
        _slots[slot] = ++Count;
        return Count - 1;
    }
}
