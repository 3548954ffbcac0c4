namespace SwingStudy.Domain.Tables;

/// <summary>Lists of numbers such as curve samples; a list is null where missing, a sample NaN where lost.</summary>
public sealed record NumberListColumn(double[]?[] Values) : Column
{
    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.NumberList;

    /// <inheritdoc/>
    public override int Length => Values.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => Values[row] is null;

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new NumberListColumn(Pick(Values, rows));
}
