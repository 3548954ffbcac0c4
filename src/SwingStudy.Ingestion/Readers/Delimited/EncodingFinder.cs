using System.Buffers;
using System.Text;
using System.Text.Unicode;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>
/// Finds the encoding of a whole file: the declared one, a byte order mark, strict UTF-8, else Windows-1252. Every byte is checked, so that reading
/// on never meets one without meaning and never replaces a character.
/// </summary>
internal static class EncodingFinder
{
    private const int ChunkBytes = 1 << 20;

    /// <summary>Bytes that Windows-1252 leaves without a character.</summary>
    private static readonly SearchValues<byte> Undefined1252 = SearchValues.Create([0x81, 0x8D, 0x8F, 0x90, 0x9D]);

    /// <summary>The encoding, or the lines that fit none.</summary>
    public static Outcome<FoundEncoding> Find(Stream stream, string? declared, string file)
    {
        var start = new byte[4];
        stream.Position = 0;
        var mark = Encodings.ByMark(start.AsSpan(0, stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)));
        if (declared is not null)
            return Declared(stream, declared, mark, file);
        if (mark is { } found)
            return Checked(stream, new(Encodings.Get(found.Name), found.Name, "byte order mark", found.Length), file);
        var survey = ByteSurvey.Of(stream);
        if (survey.Utf16Name is { } name)
            return Checked(stream, new(Encodings.Get(name), name, "zero bytes between letters", 0), file);
        if (survey.HasZeroBytes)
            return ReaderMessages.Binary(file);
        return survey.IsUtf8
            ? new FoundEncoding(Encodings.Get("utf-8"), "utf-8", "strict UTF-8", 0)
            : Fallback(stream, file);
    }

    private static Outcome<FoundEncoding> Declared(Stream stream, string declared, (string Name, int Length)? mark, string file)
    {
        if (!Encodings.TryGet(declared, out var encoding))
            return ReaderMessages.EncodingUnknown(file, declared);
        var name = encoding.WebName;
        if (mark is not { } found)
            return Checked(stream, new(encoding, name, "declared", 0), file);
        return string.Equals(found.Name, name, StringComparison.OrdinalIgnoreCase)
            ? Checked(stream, new(encoding, name, "declared", found.Length), file)
            : ReaderMessages.EncodingContradicted(file, name, found.Name);
    }

    /// <summary>Holds the whole file against an encoding; what does not fit is decoded once more, to tell its line.</summary>
    private static Outcome<FoundEncoding> Checked(Stream stream, FoundEncoding found, string file) =>
        found.Name == "utf-8" && ByteSurvey.Of(stream).IsUtf8 ? found : Decoded(stream, found, file);

    private static Outcome<FoundEncoding> Decoded(Stream stream, FoundEncoding found, string file)
    {
        var line = 1;
        var characters = new char[64 * 1024];
        using var text = new TextSource(stream, found);
        try
        {
            while (text.Read(characters) is var count and > 0)
                line += characters.AsSpan(0, count).Count('\n');
        }
        catch (DecoderFallbackException e)
        {
            return ReaderMessages.EncodingMisfit(file, line, found.Name, found.Basis, e.BytesUnknown ?? []);
        }

        return found;
    }

    /// <summary>Windows-1252, unless some lines are UTF-8 or hold bytes that it lacks.</summary>
    private static Outcome<FoundEncoding> Fallback(Stream stream, string file)
    {
        List<int> utf8 = [], other = [], undefined = [];
        var line = 1;
        foreach (var chunk in Lines(stream))
        {
            foreach (var range in chunk.Span.Split((byte)'\n'))
            {
                var text = chunk.Span[range];
                if (!Ascii.IsValid(text))
                {
                    (Utf8.IsValid(text) ? utf8 : other).Add(line);
                    if (text.ContainsAny(Undefined1252) && !Utf8.IsValid(text))
                        undefined.Add(line);
                }

                line++;
            }

            line--;
        }

        if (utf8.Count > 0)
            return ReaderMessages.EncodingMixed(file, utf8, other);
        return undefined.Count > 0
            ? ReaderMessages.EncodingMisfit(file, undefined[0], Encodings.Fallback, "the fallback for text that is no UTF-8", [])
            : new FoundEncoding(Encodings.Get(Encodings.Fallback), Encodings.Fallback, "fallback, since it is no UTF-8", 0);
    }

    /// <summary>The file in pieces that end with a line, or, where a line is longer than a piece, between bytes below 0x80.</summary>
    private static IEnumerable<ReadOnlyMemory<byte>> Lines(Stream stream)
    {
        stream.Position = 0;
        var buffer = new byte[ChunkBytes];
        var kept = 0;
        while (true)
        {
            var count = kept + stream.ReadAtLeast(buffer.AsSpan(kept), buffer.Length - kept, throwOnEndOfStream: false);
            if (count < buffer.Length)
            {
                yield return buffer.AsMemory(0, count);
                yield break;
            }

            var end = buffer.AsSpan().LastIndexOf((byte)'\n') + 1;
            if (end == 0)
                end = Array.FindLastIndex(buffer, value => value < 0x80) + 1;
            if (end == 0)
                end = buffer.Length;
            yield return buffer.AsMemory(0, end);
            kept = buffer.Length - end;
            buffer.AsSpan(end).CopyTo(buffer);
        }
    }
}
