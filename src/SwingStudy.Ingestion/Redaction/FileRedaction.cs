using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Packed;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Cuts one person out of an export: each record that is the person's goes, every other byte that can stay does, and lines keep their numbers.</summary>
public static class FileRedaction
{
    /// <summary>Cuts a file that a mapping reads.</summary>
    /// <param name="content">Its bytes.</param>
    /// <param name="name">Its name, which may tell the person too.</param>
    /// <param name="mapping">The mapping.</param>
    /// <param name="person">The person.</param>
    /// <param name="rows">Lines that are known to be the person's, such as those of captures that were linked by time.</param>
    public static RedactedFile Cut(byte[] content, string name, SourceMapping mapping, PersonTexts person, IReadOnlySet<int> rows)
    {
        // What is cut is stored unpacked: readers know packed files by their bytes.
        content = PackedFile.Unpack(content);
        // A recording that no column gives to a player stands on many lines, of which the first alone is known.
        var canBeCut = mapping.Reader is ReaderKind.Delimited or ReaderKind.Ndjson or ReaderKind.Json or ReaderKind.Workbook
            && (mapping.Rows != RowMeaning.Recordings || mapping.Participant?.Column is not null);
        if (!canBeCut || !RecordReaders.Open(new MemoryStream(content, writable: false), name, mapping).Succeeded(out var document))
            return rows.Count > 0 ? RedactedFile.Whole : LineRedaction.CutText(content, person);
        using (document)
        {
            var records = PersonRecords.Of(document, mapping, person, rows);
            return mapping.Reader switch
            {
                ReaderKind.Workbook => WorkbookRedaction.Cut(content, mapping.Layout.Sheet, records, person),
                ReaderKind.Json => JsonRedaction.Cut(content, document, records, person),
                _ => LineRedaction.Cut(content, document, records, person),
            };
        }
    }

    /// <summary>Whether a person stands anywhere in bytes of which nothing is known: in text of any usual encoding, or in the parts of a package.</summary>
    public static bool Names(byte[] content, PersonTexts person) => FileTexts.Name(content, person);

    /// <summary>The same for a file of any size.</summary>
    /// <param name="content">Its bytes, at their start; the stream can be set back.</param>
    /// <param name="person">The person.</param>
    public static bool Names(Stream content, PersonTexts person) => FileTexts.Name(content, person);
}
