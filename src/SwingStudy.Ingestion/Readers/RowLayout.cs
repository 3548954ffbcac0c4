namespace SwingStudy.Ingestion.Readers;

/// <summary>Where things stand in a text or sheet.</summary>
/// <param name="Columns">The headings.</param>
/// <param name="Cells">Their texts as they stand in the file, two rows joined.</param>
/// <param name="Preamble">Lines above them.</param>
/// <param name="HeadingTexts">Raw texts of the heading rows.</param>
/// <param name="UnitsText">Raw text of the units row; null when there is none.</param>
/// <param name="HeadingLine">Line of the first heading row.</param>
/// <param name="FirstLine">Line below headings and units.</param>
/// <param name="RowsEndWithDelimiter">Rows have one more delimiter than the headings, with nothing behind it.</param>
/// <param name="Missing">Mapped headings that the file lacks.</param>
internal sealed record RowLayout(
    HeadingRow Columns,
    IReadOnlyList<string> Cells,
    IReadOnlyList<PreambleLine> Preamble,
    IReadOnlyList<string> HeadingTexts,
    string? UnitsText,
    int HeadingLine,
    int FirstLine,
    bool RowsEndWithDelimiter,
    IReadOnlyList<string> Missing);
