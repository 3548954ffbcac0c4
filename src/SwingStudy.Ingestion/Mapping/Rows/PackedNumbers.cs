using SwingStudy.Domain.Tables;

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

    private PackedNumbers(double[] values, byte[]? narrow, ushort[]? wide) => (_values, _narrow, _wide) = (values, narrow, wide);

    /// <summary>Whether any row has a number.</summary>
    public bool HasAny { get; private init; }

    /// <summary>The number of a row; NaN where missing.</summary>
    public double this[int row] => _narrow is not null ? _values[_narrow[row]] : _wide is not null ? _values[_wide[row]] : _values[row];

    /// <summary>Packs the numbers.</summary>
    /// <param name="numbers">The column; NaN where missing. It is copied.</param>
    /// <param name="distinct">Serves for finding them.</param>
    public static PackedNumbers Of(ReadOnlySpan<double> numbers, DistinctNumbers distinct)
    {
        distinct.Begin(Math.Min(numbers.Length / RowsPerDistinct, ushort.MaxValue));
        var places = new ushort[numbers.Length];
        var present = 0;
        for (var row = 0; row < numbers.Length; row++)
        {
            if (double.IsNaN(numbers[row]))
                continue;
            var place = distinct.PlaceOf(numbers[row]);
            if (place < 0)
                return new PackedNumbers(numbers.ToArray(), null, null) { HasAny = true };
            places[row] = (ushort)(place + 1);
            present++;
        }

        // Place 0 is for missing ones.
        double[] values = [double.NaN, .. distinct.Values];
        return values.Length <= byte.MaxValue + 1
            ? new PackedNumbers(values, Array.ConvertAll(places, place => (byte)place), null) { HasAny = present > 0 }
            : new PackedNumbers(values, null, places) { HasAny = present > 0 };
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
}
