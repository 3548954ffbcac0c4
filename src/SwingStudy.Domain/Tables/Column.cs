namespace SwingStudy.Domain.Tables;

/// <summary>Values of one column of a <see cref="RowSet"/>. The arrays are handed over, not copied: do not change them afterwards.</summary>
public abstract record Column
{
    private protected Column()
    {
    }

    /// <summary>What the column holds.</summary>
    public abstract ColumnKind Kind { get; }

    /// <summary>Number of rows.</summary>
    public abstract int Length { get; }

    /// <summary>Whether the row has no value.</summary>
    public abstract bool IsMissing(int row);

    /// <summary>The rows at <paramref name="rows"/>, in that order.</summary>
    public abstract Column Select(ReadOnlySpan<int> rows);

    /// <summary>A column of <paramref name="length"/> missing values, for files that are older than the column.</summary>
    public static Column Missing(ColumnKind kind, int length) => kind switch
    {
        ColumnKind.Text => new TextColumn(new string?[length]),
        ColumnKind.Number => new NumberColumn(Filled(length, double.NaN)),
        ColumnKind.Integer => new IntegerColumn(new long?[length]),
        ColumnKind.Boolean => new BooleanColumn(new bool?[length]),
        ColumnKind.Instant => new InstantColumn(Filled(length, InstantColumn.MissingMillis)),
        ColumnKind.NumberList => new NumberListColumn(new double[]?[length]),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };

    private protected static T[] Pick<T>(T[] values, ReadOnlySpan<int> rows)
    {
        var picked = new T[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            picked[i] = values[rows[i]];
        return picked;
    }

    private static T[] Filled<T>(int length, T value)
    {
        var values = new T[length];
        Array.Fill(values, value);
        return values;
    }
}
