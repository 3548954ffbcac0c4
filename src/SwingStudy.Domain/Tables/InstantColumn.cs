namespace SwingStudy.Domain.Tables;

/// <summary>Moments as milliseconds since 1970-01-01T00:00:00Z; <see cref="MissingMillis"/> where missing.</summary>
public sealed record InstantColumn(long[] UnixMillis) : Column
{
    /// <summary>Stands for a missing moment in memory; null on disk.</summary>
    public const long MissingMillis = long.MinValue;

    /// <inheritdoc/>
    public override ColumnKind Kind => ColumnKind.Instant;

    /// <inheritdoc/>
    public override int Length => UnixMillis.Length;

    /// <inheritdoc/>
    public override bool IsMissing(int row) => UnixMillis[row] == MissingMillis;

    /// <inheritdoc/>
    public override Column Select(ReadOnlySpan<int> rows) => new InstantColumn(Pick(UnixMillis, rows));
}
