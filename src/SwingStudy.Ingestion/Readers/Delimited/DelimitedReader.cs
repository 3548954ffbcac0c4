using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Opens delimited text: encoding, delimiter, headings and decimal sign are declared or found from the whole file.</summary>
internal static class DelimitedReader
{
    private static readonly char?[] OneColumn = [null];

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
        if (!FindDecimal(blocks, layout, mapping, file).Succeeded(out var sign, out problems))
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
        FoundLayout? best = null;
        Outcome<FoundLayout>? failure = null;
        var candidates = DelimiterFinder.Rank(stream, encoding);
        foreach (var delimiter in candidates.Select(candidate => (char?)candidate.Delimiter).Concat(OneColumn))
        {
            var outcome = Try(stream, encoding, delimiter, mapping, file);
            if (!outcome.Succeeded(out var found))
                failure ??= outcome;
            else if (best is null || found.Layout.Missing.Count < best.Layout.Missing.Count)
                best = found;
            if (best?.Layout.Missing.Count == 0)
                break;
        }

        return best ?? failure!;
    }

    private static Outcome<FoundLayout> Try(Stream stream, FoundEncoding encoding, char? delimiter, SourceMapping mapping, string file) =>
        HeadingFinder.Find(HeadRecord.Read(stream, encoding, delimiter, file), mapping, file).Succeeded(out var layout, out var problems)
            ? new FoundLayout(delimiter, layout)
            : Outcome<FoundLayout>.Failed(problems);

    private static Outcome<DecimalSign> FindDecimal(DelimitedBlocks blocks, DelimitedLayout layout, SourceMapping mapping, string file)
    {
        if (mapping.Text.Decimal is { } declared)
            return new DecimalSign(declared);
        if (mapping.Text.Thousands is '.' or ',')
            return new DecimalSign(mapping.Text.Thousands == '.' ? ',' : '.');
        var columns = MappedColumns.WithNumbers(mapping).Select(layout.Columns.Find).OfType<Heading>().Distinct().ToList();
        var finder = new DecimalFinder(file, columns, mapping.Missing, mapping.Text.Thousands);
        if (columns.Count == 0)
            return finder.Decide();
        foreach (var block in blocks.Read(new RecordCounts()))
        {
            using (block)
                finder.Observe(block);
        }

        return finder.Decide();
    }

    private sealed record FoundLayout(char? Delimiter, DelimitedLayout Layout);
}
