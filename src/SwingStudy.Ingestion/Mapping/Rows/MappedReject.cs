namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>A row or cell that could not be taken.</summary>
/// <param name="Line">Line or row in the file.</param>
/// <param name="Raw">Raw text: of the cell, or of the row where no one cell is to blame.</param>
/// <param name="Reason">A stable word, see <see cref="Columns.RejectReason"/>.</param>
/// <param name="Expected">What would have been right.</param>
/// <param name="IsRow">Whether the row is lost (true) or taken without the cell (false).</param>
/// <param name="Column">Heading of the cell.</param>
/// <param name="Variable">Variable of the cell.</param>
internal sealed record MappedReject(int Line, string Raw, string Reason, string Expected, bool IsRow, string? Column, string? Variable)
{
    /// <summary>Line of the row that was taken without the cell, where that is another than the cell's.</summary>
    public int? RowLine { get; init; }
}
