using System.Text;
using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>Opens JSON documents with an array of records, and NDJSON with one record a line.</summary>
internal static class JsonReader
{
    /// <summary>The document, or all problems that hold the file. Takes the stream over when it succeeds.</summary>
    public static Outcome<RecordDocument> Open(Stream stream, string file, SourceMapping mapping)
    {
        if (!EncodingFinder.Find(stream, mapping.Text.Encoding, file).Succeeded(out var encoding, out var problems)
            || !Texts(stream, encoding, file, mapping).Succeeded(out var texts, out problems))
            return Outcome<RecordDocument>.Failed(problems);
        var keys = new JsonColumns();
        var blocks = new JsonBlocks(texts, keys, file);
        blocks.FindColumns();
        var columns = HeadingRow.From(keys.Paths, null);
        var wanted = MappedColumns.Of(mapping);
        var hits = wanted.Count(name => columns.Find(name) is not null);
        if (keys.Paths.Count == 0 || hits * 2 < wanted.Count)
        {
            texts.Dispose();
            return ReaderMessages.HeadingsMissing(file, wanted, keys.Paths.Count == 0 || hits == 0 ? null : 1, columns);
        }

        if (!DecimalFinder.Find(blocks, columns, mapping, file).Succeeded(out var sign, out problems))
        {
            texts.Dispose();
            return Outcome<RecordDocument>.Failed(problems);
        }

        return new RecordDocument(blocks, new RecordCounts())
        {
            File = file,
            Encoding = encoding.Name,
            EncodingBasis = encoding.Basis,
            Decimal = sign.Sign,
            Preamble = texts.Preamble,
            Columns = columns,
            Notices = [.. HeadingRow.Notices(file, 1, columns, keys.Paths)],
        };
    }

    private static Outcome<IRecordTexts> Texts(Stream stream, FoundEncoding encoding, string file, SourceMapping mapping)
    {
        if (mapping.Reader == ReaderKind.Ndjson)
            return new LineTexts(stream, encoding, file);
        if (stream.Length > ReaderLimits.JsonBytes)
            return ReaderMessages.JsonTooLarge(file, stream.Length);
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(Utf8(stream, encoding), new JsonDocumentOptions { MaxDepth = ReaderLimits.JsonDepth });
        }
        catch (JsonException e)
        {
            return ReaderMessages.JsonMalformed(file, (int)((e.LineNumber ?? 0) + 1), e.Message);
        }

        return JsonRecords.Find(document.RootElement, mapping.Layout.Records) is { } records
            ? new ArrayTexts(document, records, stream)
            : Missing(document, file, mapping.Layout.Records);
    }

    private static Outcome<IRecordTexts> Missing(JsonDocument document, string file, string? path)
    {
        document.Dispose();
        return ReaderMessages.RecordsMissing(file, path);
    }

    private static ReadOnlyMemory<byte> Utf8(Stream stream, FoundEncoding encoding)
    {
        using var source = new TextSource(stream, encoding);
        var characters = new char[64 * 1024];
        var utf8 = new MemoryStream((int)stream.Length);
        using (var writer = new StreamWriter(utf8, new UTF8Encoding(false), bufferSize: 64 * 1024, leaveOpen: true))
        {
            while (source.Read(characters) is var count and > 0)
                writer.Write(characters, 0, count);
        }

        return utf8.GetBuffer().AsMemory(0, (int)utf8.Length);
    }
}
