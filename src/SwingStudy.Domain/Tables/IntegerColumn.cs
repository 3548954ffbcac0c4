namespace SwingStudy.Domain.Tables;

/// <summary>Whole numbers; null where missing.</summary>
public sealed record IntegerColumn(long?[] Values) : Column
{
    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.Integer;

    /// <inheritdoc/>
    public override int Length => Values.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => Values[row] is null;

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new IntegerColumn(Pick(Values, rows));
}
