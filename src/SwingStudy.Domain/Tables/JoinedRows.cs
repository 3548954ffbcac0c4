namespace SwingStudy.Domain.Tables;

/// <summary>Several sets of rows of one table as one.</summary>
public static class JoinedRows
{
    /// <summary>The rows of all sets, in order.</summary>
    public static RowSet Of(TableDefinition table, IReadOnlyList<RowSet> sets) => sets.Count switch
    {
        0 => RowSet.Empty(table),
        1 => sets[0],
        _ => new RowSet(table, [.. Enumerable.Range(0, table.Columns.Count).Select(i => Join([.. sets.Select(set => set.Columns[i])]))]),
    };

    private static Column Join(IReadOnlyList<Column> parts) => parts[0] switch
    {
        TextColumn => new TextColumn(Flat<TextColumn, string?>(parts, part => part.Values)),
        NumberColumn => new NumberColumn(Flat<NumberColumn, double>(parts, part => part.Values)),
        IntegerColumn => new IntegerColumn(Flat<IntegerColumn, long?>(parts, part => part.Values)),
        BooleanColumn => new BooleanColumn(Flat<BooleanColumn, bool?>(parts, part => part.Values)),
        InstantColumn => new InstantColumn(Flat<InstantColumn, long>(parts, part => part.UnixMillis)),
        NumberListColumn => new NumberListColumn(Flat<NumberListColumn, double[]?>(parts, part => part.Values)),
        var other => throw new ArgumentException($"Columns of {other.Kind} cannot be joined.", nameof(parts)),
    };

    private static T[] Flat<TColumn, T>(IReadOnlyList<Column> parts, Func<TColumn, T[]> values)
        where TColumn : Column
    {
        var joined = new T[parts.Sum(part => part.Length)];
        var next = 0;
        foreach (var part in parts)
        {
            values((TColumn)part).CopyTo(joined, next);
            next += part.Length;
        }

        return joined;
    }
}
