namespace SwingStudy.Domain.Tables;

/// <summary>Texts; null where missing.</summary>
public sealed record TextColumn(string?[] Values) : Column
{
    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.Text;

    /// <inheritdoc/>
    public override int Length => Values.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => Values[row] is null;

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new TextColumn(Pick(Values, rows));
}
