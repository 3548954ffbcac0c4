using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Opens delimited text: encoding, delimiter, headings and decimal sign are declared or found from the whole file.</summary>
internal static class DelimitedReader
{
    /// <summary>The document, or all problems that hold the file. Takes the stream over when it succeeds.</summary>
    public static Outcome<RecordDocument> Open(Stream stream, string file, SourceMapping mapping)
    {
        if (!EncodingFinder.Find(stream, mapping.Text.Encoding, file).Succeeded(out var encoding, out var problems)
            || !FindLayout(stream, encoding, mapping, file).Succeeded(out var found, out problems))
            return Outcome<RecordDocument>.Failed(problems);
        var (delimiter, layout) = found;
        var blocks = new DelimitedBlocks(stream, encoding, delimiter, layout, file);
        var start = new RecordCounts
        {
            Preamble = layout.Preamble.Count,
            Headings = layout.HeadingTexts.Count,
            Units = layout.UnitsText is null ? 0 : 1,
            Lines = layout.FirstLine - 1,
        };
        if (!DecimalFinder.Find(blocks, layout.Columns, mapping, file).Succeeded(out var sign, out problems))
            return Outcome<RecordDocument>.Failed(problems);
        return new RecordDocument(blocks, start)
        {
            File = file,
            Encoding = encoding.Name,
            EncodingBasis = encoding.Basis,
            Delimiter = delimiter,
            Decimal = sign.Sign,
            Preamble = layout.Preamble,
            Columns = layout.Columns,
            Notices = [.. HeadingRow.Notices(file, layout.HeadingLine, layout.Columns, layout.Cells)],
        };
    }

    private static Outcome<FoundLayout> FindLayout(Stream stream, FoundEncoding encoding, SourceMapping mapping, string file)
    {
        if (mapping.Text.Delimiter is { } declared)
            return Try(stream, encoding, declared, mapping, file);
        var outcomes = DelimiterFinder.Candidates.Select(sign => (char?)sign).Append(null)
            .Select(delimiter => (Delimiter: delimiter, Outcome: Try(stream, encoding, delimiter, mapping, file)))
            .ToList();
        var whole = outcomes.Where(pair => pair.Outcome.Value?.Layout is { Missing.Count: 0, Columns.Headings.Count: > 1 }).ToList();
        if (whole.Count == 1 && MappedColumns.Of(mapping).Count > 1)
            return whole[0].Outcome;

        // The headings do not settle it, so all records do.
        var rank = DelimiterFinder.Rank(stream, encoding).Select(candidate => (char?)candidate.Delimiter).Append(null).ToList();
        return outcomes
            .OrderBy(pair => pair.Outcome.Value?.Layout.Missing.Count ?? int.MaxValue)
            .ThenBy(pair => rank.IndexOf(pair.Delimiter) is var place and >= 0 ? place : int.MaxValue)
            .First().Outcome;
    }

    private static Outcome<FoundLayout> Try(Stream stream, FoundEncoding encoding, char? delimiter, SourceMapping mapping, string file)
    {
        using var records = new HeadRecords(DelimitedHead.Read(stream, encoding, delimiter, file));
        return HeadingFinder.Find(records, mapping, file).Succeeded(out var layout, out var problems)
            ? new FoundLayout(delimiter, layout)
            : Outcome<FoundLayout>.Failed(problems);
    }

    private sealed record FoundLayout(char? Delimiter, RowLayout Layout);
}
