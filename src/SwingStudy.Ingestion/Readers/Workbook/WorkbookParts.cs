namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>What the parts of a workbook say beside its cells.</summary>
/// <param name="Epoch1904">Whether days count from 1904.</param>
/// <param name="Faulty">Cells without a value, by sheet name, row and column from 0: an error such as <c>#DIV/0!</c>, or a formula saved without its value.</param>
internal sealed record WorkbookParts(bool Epoch1904, IReadOnlyDictionary<(string Sheet, int Row, int Column), string> Faulty)
{
    /// <summary>Nothing known, as for workbooks of the old binary format.</summary>
    public static WorkbookParts None { get; } = new(false, new Dictionary<(string, int, int), string>());
}
