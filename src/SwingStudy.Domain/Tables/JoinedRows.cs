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
        TextColumn => new TextColumn([.. parts.Cast<TextColumn>().SelectMany(part => part.Values)]),
        NumberColumn => new NumberColumn([.. parts.Cast<NumberColumn>().SelectMany(part => part.Values)]),
        IntegerColumn => new IntegerColumn([.. parts.Cast<IntegerColumn>().SelectMany(part => part.Values)]),
        BooleanColumn => new BooleanColumn([.. parts.Cast<BooleanColumn>().SelectMany(part => part.Values)]),
        InstantColumn => new InstantColumn([.. parts.Cast<InstantColumn>().SelectMany(part => part.UnixMillis)]),
        NumberListColumn => new NumberListColumn([.. parts.Cast<NumberListColumn>().SelectMany(part => part.Values)]),
        var other => throw new ArgumentException($"Columns of {other.Kind} cannot be joined.", nameof(parts)),
    };
}
