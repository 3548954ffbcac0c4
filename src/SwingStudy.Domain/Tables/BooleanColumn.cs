namespace SwingStudy.Domain.Tables;

/// <summary>True, false, or null where missing.</summary>
public sealed record BooleanColumn(bool?[] Values) : Column
{
    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.Boolean;

    /// <inheritdoc/>
    public override int Length => Values.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => Values[row] is null;

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new BooleanColumn(Pick(Values, rows));
}
