namespace SwingStudy.Domain.Tables;

/// <summary>Some rows of one table, column by column, in the table's column order.</summary>
public sealed class RowSet
{
    private readonly Dictionary<string, Column> _byName;

    /// <summary>Takes one column for each column of <paramref name="table"/>, in its order.</summary>
    /// <exception cref="ArgumentException">Count, kind or length of the columns do not fit.</exception>
    public RowSet(TableDefinition table, IReadOnlyList<Column> columns)
    {
        if (columns.Count != table.Columns.Count)
            throw new ArgumentException($"Table {table.Name} has {table.Columns.Count} columns, got {columns.Count}.", nameof(columns));
        Count = columns.Count == 0 ? 0 : columns[0].Length;
        _byName = new Dictionary<string, Column>(columns.Count, StringComparer.Ordinal);
        for (var i = 0; i < columns.Count; i++)
        {
            var definition = table.Columns[i];
            if (columns[i].Kind != definition.Kind || columns[i].Length != Count)
            {
                throw new ArgumentException(
                    $"Column {table.Name}.{definition.Name} must be {Count} values of {definition.Kind}, got {columns[i].Length} of {columns[i].Kind}.",
                    nameof(columns));
            }

            _byName.Add(definition.Name, columns[i]);
        }

        Table = table;
        Columns = columns;
    }

    /// <summary>The table whose rows these are.</summary>
    public TableDefinition Table { get; }

    /// <summary>The columns in the table's order.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Number of rows.</summary>
    public int Count { get; }

    /// <summary>The column of that name.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such column.</exception>
    public Column this[string name] =>
        _byName.TryGetValue(name, out var column) ? column : throw new KeyNotFoundException($"Table {Table.Name} has no column '{name}'.");

    /// <summary>The texts of a text column.</summary>
    public string?[] Texts(string name) => ((TextColumn)this[name]).Values;

    /// <summary>The numbers of a number column; NaN where missing.</summary>
    public double[] Numbers(string name) => ((NumberColumn)this[name]).Values;

    /// <summary>The values of a whole-number column.</summary>
    public long?[] Integers(string name) => ((IntegerColumn)this[name]).Values;

    /// <summary>The values of a true-or-false column.</summary>
    public bool?[] Booleans(string name) => ((BooleanColumn)this[name]).Values;

    /// <summary>The moments of an instant column, in milliseconds since 1970 UTC.</summary>
    public long[] Instants(string name) => ((InstantColumn)this[name]).UnixMillis;

    /// <summary>The rows at <paramref name="rows"/>, in that order.</summary>
    public RowSet Select(ReadOnlySpan<int> rows)
    {
        var columns = new Column[Columns.Count];
        for (var i = 0; i < columns.Length; i++)
            columns[i] = Columns[i].Select(rows);
        return new RowSet(Table, columns);
    }

    /// <summary>No rows of <paramref name="table"/>.</summary>
    public static RowSet Empty(TableDefinition table) =>
        new(table, [.. table.Columns.Select(column => Column.Missing(column.Kind, 0))]);
}
