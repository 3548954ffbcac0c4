using SwingStudy.Domain.Tables;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>Some rows of a file as stretches that lie in one block each; fills columns with their values.</summary>
/// <param name="parts">Each block with the number of rows behind which its stretch ends.</param>
internal readonly struct Stretches(List<(MappedBlock Block, int End)> parts)
{
    /// <summary>Fills texts of a column of the plan.</summary>
    /// <param name="column">The column.</param>
    /// <param name="places">Place of each row in its block.</param>
    /// <param name="target">One text a row.</param>
    public void Texts(int column, ReadOnlySpan<int> places, Span<string?> target)
    {
        var i = 0;
        foreach (var (block, end) in parts)
        {
            for (var values = block.Texts[column]; i < end; i++)
                target[i] = values[places[i]];
        }
    }

    /// <summary>Fills practice swings.</summary>
    public void Practice(ReadOnlySpan<int> places, Span<bool?> target)
    {
        var i = 0;
        foreach (var (block, end) in parts)
        {
            for (; i < end; i++)
                target[i] = block.Practice is { } practice && practice[places[i]];
        }
    }

    /// <summary>Fills the device's numbers.</summary>
    public void Sequence(ReadOnlySpan<int> places, Span<long?> target)
    {
        var i = 0;
        foreach (var (block, end) in parts)
        {
            for (var values = block.Sequence; i < end; i++)
                target[i] = Whole(values[places[i]]);
        }
    }

    /// <summary>Fills a numeric column of the plan, whatever its kind.</summary>
    /// <exception cref="InvalidOperationException">The target cannot hold numbers.</exception>
    public void Numbers(int column, ReadOnlySpan<int> places, Column target)
    {
        var i = 0;
        foreach (var (block, end) in parts)
        {
            var values = block.Numbers[column];
            switch (target)
            {
                case NumberColumn numbers:
                    values.Pick(places[i..end], numbers.Values.AsSpan(i));
                    i = end;
                    break;
                case IntegerColumn integers:
                    for (; i < end; i++)
                        integers.Values[i] = Whole(values[places[i]]);
                    break;
                case BooleanColumn booleans:
                    for (; i < end; i++)
                        booleans.Values[i] = values[places[i]] is var value && double.IsNaN(value) ? null : value == 1;
                    break;
                default:
                    throw new InvalidOperationException($"A numeric column cannot fill {target.Kind}.");
            }
        }
    }

    private static long? Whole(double value) => double.IsNaN(value) ? null : (long)value;
}
