namespace SwingStudy.Domain.Tables;

/// <summary>Numbers in the canonical unit; NaN where missing, never infinite.</summary>
public sealed record NumberColumn(double[] Values) : Column
{
    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.Number;

    /// <inheritdoc/>
    public override int Length => Values.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => double.IsNaN(Values[row]);

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new NumberColumn(Pick(Values, rows));
}
