using System.Numerics;
using System.Runtime.CompilerServices;

namespace SwingStudy.Domain.Tables;

/// <summary>The distinct numbers of a column in order of appearance, told apart bit by bit. One object serves column after column; for one thread.</summary>
/// <remarks>Its table grows with what it finds: measured columns mostly hold few hundred distinct values, and then it stays in the processor's nearest cache.</remarks>
public sealed class DistinctNumbers
{
    private const ulong Scatter = 0x9E3779B97F4A7C15;
    private const int FirstSlots = 1 << 10;
    private double[] _distinct = new double[FirstSlots / 2];
    private int[] _slots = new int[FirstSlots];
    private int _size = FirstSlots;
    private int _shift;
    private int _most;

    /// <summary>How many differ.</summary>
    public int Count { get; private set; }

    /// <summary>The distinct numbers; valid until the next column begins.</summary>
    public ReadOnlySpan<double> Values => _distinct.AsSpan(0, Count);

    /// <summary>Forgets the column before.</summary>
    /// <param name="most">More distinct numbers than these are not worth it.</param>
    public void Begin(int most)
    {
        (_most, Count, _size, _shift) = (most, 0, FirstSlots, 64 - BitOperations.Log2(FirstSlots));
        _slots.AsSpan(0, _size).Clear();
    }

    /// <summary>Place of a number among the distinct ones; -1 when it would be one more than are worth it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int PlaceOf(double value)
    {
        var bits = BitConverter.DoubleToUInt64Bits(value);
        var mask = _size - 1;
        var slots = _slots;
        var slot = (int)((bits * Scatter) >> _shift);
        for (; slots[slot] != 0; slot = (slot + 1) & mask)
        {
            var place = slots[slot] - 1;
            if (BitConverter.DoubleToUInt64Bits(_distinct[place]) == bits)
                return place;
        }

        return Add(value, slot);
    }

    private int Add(double value, int slot)
    {
        if (Count >= _most)
            return -1;
        if (Count == _distinct.Length)
            Array.Resize(ref _distinct, Count * 2);
        _distinct[Count] = value;
        _slots[slot] = ++Count;
        if (Count * 2 >= _size)
            Grow();
        return Count - 1;
    }

    private void Grow()
    {
        _size *= 2;
        _shift--;
        if (_slots.Length < _size)
            _slots = new int[_size];
        else
            _slots.AsSpan(0, _size).Clear();
        for (var place = 0; place < Count; place++)
        {
            var slot = (int)((BitConverter.DoubleToUInt64Bits(_distinct[place]) * Scatter) >> _shift);
            while (_slots[slot] != 0)
                slot = (slot + 1) & (_size - 1);
            _slots[slot] = place + 1;
        }
    }
}
