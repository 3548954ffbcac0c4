using System.Text;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Cuts records out of a JSON document: each becomes an empty object, so that the others keep their positions.</summary>
internal static class JsonRedaction
{
    public static RedactedFile Cut(byte[] content, RecordDocument document, PersonRecords records, PersonTexts person)
    {
        var encoding = Encodings.Get(document.Encoding!);
        var text = encoding.GetString(content);
        var cut = new StringBuilder(text.Length);
        var done = 0;
        foreach (var (line, raw) in Records(document))
        {
            var at = text.IndexOf(raw, done, StringComparison.Ordinal);
            if (at < 0)
                return RedactedFile.Whole;
            cut.Append(person.Without(text[done..at])).Append(records.Starts.Contains(line) ? "{}" : person.Without(raw));
            done = at + raw.Length;
        }

        cut.Append(person.Without(text[done..]));
        if (cut.Equals(text))
            return RedactedFile.Untouched;
        // Names may be spelt with escapes (\u00e9) that the text does not show: then nothing may stay.
        var left = encoding.GetBytes(cut.ToString());
        return FileTexts.Name(left, person) ? RedactedFile.Whole : new RedactedFile(RedactionKind.Cut, left, records.Starts);
    }

    private static List<(int Line, string Raw)> Records(RecordDocument document)
    {
        var records = new List<(int, string)>();
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                    records.Add((block.Line(row), block.Raw(row).ToString()));
                records.AddRange(block.Rejected.Where(rejected => !rejected.Raw.EndsWith('…')).Select(rejected => (rejected.Line, rejected.Raw)));
            }
        }

        return [.. records.OrderBy(record => record.Item1)];
    }
}
