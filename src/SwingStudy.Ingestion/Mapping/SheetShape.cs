using System.Text.RegularExpressions;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>What is known of a file before its rows are read.</summary>
/// <param name="File">Its name, for messages.</param>
/// <param name="Columns">Its headings.</param>
/// <param name="Preamble">Lines above the headings.</param>
/// <param name="NameMatch">Match of the mapping's file pattern, with its named groups; null when its name does not fit.</param>
/// <param name="Decimal">Decimal sign of the file.</param>
/// <param name="Epoch1904">Whether a workbook counts its days from 1904.</param>
internal sealed record SheetShape(
    string File,
    HeadingRow Columns,
    IReadOnlyList<PreambleLine> Preamble,
    Match? NameMatch,
    char Decimal,
    bool Epoch1904)
{
    /// <summary>The shape of an opened document.</summary>
    public static SheetShape Of(RecordDocument document, Match? nameMatch) =>
        new(document.File, document.Columns, document.Preamble, nameMatch, document.Decimal, document.Epoch1904);
}
