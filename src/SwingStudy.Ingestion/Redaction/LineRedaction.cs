using System.Text;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Cuts records out of text with one record on one or more lines: their lines become empty, which no mapping takes for data.</summary>
internal static class LineRedaction
{
    private const char NoText = '\0';

    /// <summary>Cuts every line that names the person out of a text of which nothing else is known, such as a table that lies beside recordings.</summary>
    public static RedactedFile CutText(byte[] content, PersonTexts person)
    {
        if (!FileTexts.Name(content, person))
            return RedactedFile.Untouched;
        foreach (var encoding in new[] { Encodings.Get("utf-8"), Encodings.Get(Encodings.Fallback) })
        {
            if (!IsText(content, encoding, out var text))
                continue;
            var lines = new HashSet<int>();
            var cut = new StringBuilder(text.Length);
            foreach (var (written, end) in LineBreaks.Split(text))
            {
                var isNamed = person.IsNamedIn(written);
                cut.Append(isNamed ? "" : written).Append(end);
                if (isNamed)
                    lines.Add(lines.Count + 1);
            }

            var left = encoding.GetBytes(cut.ToString());
            return FileTexts.Name(left, person) ? RedactedFile.Whole : new RedactedFile(RedactionKind.Cut, left, lines);
        }

        return RedactedFile.Whole;
    }

    private static bool IsText(byte[] content, Encoding encoding, out string text)
    {
        try
        {
            text = encoding.GetString(content);
            return !text.Contains(NoText, StringComparison.Ordinal);
        }
        catch (DecoderFallbackException)
        {
            text = "";
            return false;
        }
    }

    public static RedactedFile Cut(byte[] content, RecordDocument document, PersonRecords records, PersonTexts person)
    {
        var encoding = Encodings.Get(document.Encoding!);
        var text = encoding.GetString(content);
        var cut = new StringBuilder(text.Length);
        var line = 0;
        foreach (var (written, end) in LineBreaks.Split(text))
        {
            line++;
            cut.Append(records.Lines.Contains(line) ? "" : person.Without(written)).Append(end);
        }

        return cut.Equals(text) ? RedactedFile.Untouched : new RedactedFile(RedactionKind.Cut, encoding.GetBytes(cut.ToString()), records.Starts);
    }
}
