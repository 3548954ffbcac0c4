namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>Numbers of one column of a block, bit for bit, in little room: what a device writes with one or two decimals repeats itself, so that a place
/// among the distinct numbers stands for each; where it does not repeat, the numbers stand themselves.</summary>
internal sealed class PackedNumbers
{
    // Beyond this the distinct numbers and the places take hardly less room than the numbers.
    private const int RowsPerDistinct = 2;
    private readonly double[] _values;
    private readonly byte[]? _narrow;
    private readonly ushort[]? _wide;

    private PackedNumbers(double[] values, byte[]? narrow, ushort[]? wide, bool hasAny) => (_values, _narrow, _wide, HasAny) = (values, narrow, wide, hasAny);

    /// <summary>Whether any row has a number.</summary>
    public bool HasAny { get; }

    /// <summary>The number of a row; NaN where missing.</summary>
    public double this[int row] => _narrow is not null ? _values[_narrow[row]] : _wide is not null ? _values[_wide[row]] : _values[row];

    /// <summary>Packs the numbers of some rows.</summary>
    /// <param name="numbers">The column; NaN where missing.</param>
    /// <param name="rows">Which of its rows.</param>
    /// <param name="scratch">Serves for packing.</param>
    public static PackedNumbers Of(ReadOnlySpan<double> numbers, ReadOnlySpan<int> rows, PackingScratch scratch)
    {
        var distinct = scratch.Distinct;
        distinct.Begin(Math.Min(rows.Length / RowsPerDistinct, ushort.MaxValue));
        var places = scratch.Places(rows.Length);
        var present = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            places[i] = 0;
            var number = numbers[rows[i]];
            if (double.IsNaN(number))
                continue;
            if (distinct.PlaceOf(number) is not (>= 0 and var place))
                return new PackedNumbers(Picked(numbers, rows), null, null, true);
            places[i] = (ushort)(place + 1);
            present++;
        }

        // Place 0 is for missing ones.
        double[] values = [double.NaN, .. distinct.Values];
        return values.Length <= byte.MaxValue + 1
            ? new PackedNumbers(values, PackingScratch.Narrow(places), null, present > 0)
            : new PackedNumbers(values, null, places.ToArray(), true);
    }

    /// <summary>Picks the numbers of some rows.</summary>
    public void Pick(ReadOnlySpan<int> rows, Span<double> target)
    {
        if (_narrow is not null)
        {
            for (var i = 0; i < rows.Length; i++)
                target[i] = _values[_narrow[rows[i]]];
        }
        else if (_wide is not null)
        {
            for (var i = 0; i < rows.Length; i++)
                target[i] = _values[_wide[rows[i]]];
        }
        else
        {
            for (var i = 0; i < rows.Length; i++)
                target[i] = _values[rows[i]];
        }
    }

    private static double[] Picked(ReadOnlySpan<double> numbers, ReadOnlySpan<int> rows)
    {
        var picked = GC.AllocateUninitializedArray<double>(rows.Length);
        for (var i = 0; i < rows.Length; i++)
            picked[i] = numbers[rows[i]];
        return picked;
    }
}
