namespace SwingStudy.Domain.Tables;

/// <summary>Collects rows one by one where there are few of them; long columns are built as arrays and handed to <see cref="RowSet"/>.</summary>
public sealed class RowSetBuilder
{
    private readonly TableDefinition _table;
    private readonly Dictionary<string, int> _positions;
    private readonly List<object?[]> _rows = [];

    /// <summary>Starts without rows.</summary>
    public RowSetBuilder(TableDefinition table)
    {
        _table = table;
        _positions = table.Columns.Select((column, position) => (column.Name, position)).ToDictionary(pair => pair.Name, pair => pair.position);
    }

    /// <summary>Number of rows so far.</summary>
    public int Count => _rows.Count;

    /// <summary>Appends a row; columns that are not named are missing.</summary>
    /// <param name="values">Column name and value: string, double, long or int, bool, <see cref="NodaTime.Instant"/>, double[], or null.</param>
    /// <exception cref="ArgumentException">A name or the type of a value does not fit the table.</exception>
    public void Add(params ReadOnlySpan<(string Column, object? Value)> values)
    {
        var row = new object?[_table.Columns.Count];
        foreach (var (name, value) in values)
        {
            if (!_positions.TryGetValue(name, out var position))
                throw new ArgumentException($"Table {_table.Name} has no column '{name}'.", nameof(values));
            row[position] = Checked(_table.Columns[position], value);
        }

        _rows.Add(row);
    }

    /// <summary>The rows collected so far.</summary>
    public RowSet Build() => new(_table, [.. _table.Columns.Select((column, position) => BuildColumn(column.Kind, position))]);

    private Column BuildColumn(ColumnKind kind, int position) => kind switch
    {
        ColumnKind.Text => new TextColumn([.. _rows.Select(row => (string?)row[position])]),
        ColumnKind.Number => new NumberColumn([.. _rows.Select(row => (double?)row[position] ?? double.NaN)]),
        ColumnKind.Integer => new IntegerColumn([.. _rows.Select(row => (long?)row[position])]),
        ColumnKind.Boolean => new BooleanColumn([.. _rows.Select(row => (bool?)row[position])]),
        ColumnKind.Instant => new InstantColumn([.. _rows.Select(row => (long?)row[position] ?? InstantColumn.MissingMillis)]),
        ColumnKind.NumberList => new NumberListColumn([.. _rows.Select(row => (double[]?)row[position])]),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };

    private object? Checked(ColumnDefinition column, object? value) => (column.Kind, value) switch
    {
        (_, null) => null,
        (ColumnKind.Text, string) => value,
        (ColumnKind.Number, double number) when !double.IsInfinity(number) => value,
        (ColumnKind.Integer, long) => value,
        (ColumnKind.Integer, int number) => (long)number,
        (ColumnKind.Boolean, bool) => value,
        (ColumnKind.Instant, NodaTime.Instant instant) => instant.ToUnixTimeMilliseconds(),
        (ColumnKind.Instant, long) => value,
        (ColumnKind.NumberList, double[]) => value,
        _ => throw new ArgumentException($"Column {_table.Name}.{column.Name} holds {column.Kind}, not '{value}' ({value.GetType().Name})."),
    };
}
