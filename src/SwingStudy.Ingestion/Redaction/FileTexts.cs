using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using SwingStudy.Ingestion.Readers.Delimited;
using SwingStudy.Ingestion.Readers.Packed;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Looks for a person in bytes of which nothing is known.</summary>
internal static partial class FileTexts
{
    private static readonly string[] Usual = ["utf-8", "windows-1252", "utf-16", "utf-16BE"];

    /// <summary>Bytes of one look: what nobody knows may be a film of gigabytes.</summary>
    private const int Look = 1 << 22;

    /// <summary>Looks overlap by more than the longest name.</summary>
    private const int Overlap = 1 << 12;

    /// <summary>Most characters in a hundred that no text has, in what is still text.</summary>
    private const int StrangeInText = 2;

    /// <summary>How deep packed files are opened within packed ones: there are some that hold themselves.</summary>
    private const int DeepestPacked = 4;

    /// <summary>
    /// Whether the person is named in the bytes, read as text in each usual encoding, or in a name or part of a zip package. Bytes that are no text hold a
    /// short pseudonym by chance: of a recording in a known format only what is text in it counts, and of others a short text counts only among other text.
    /// </summary>
    public static bool Name(byte[] content, PersonTexts person) => Name(content, person, DeepestPacked);

    /// <summary>The same for bytes that may be too many to hold; the stream can be set back.</summary>
    public static bool Name(Stream content, PersonTexts person) => Name(content, person, DeepestPacked);

    private static bool Name(byte[] content, PersonTexts person, int deepest)
    {
        // A packed file may name the person in its head as well.
        if (deepest > 0 && PackedFile.Unpack(content) is var unpacked && unpacked != content && Name(unpacked, person, deepest - 1))
            return true;
        if (C3dTexts.Of(content) is { } texts)
            return IsWrittenIn(new MemoryStream(texts, writable: false), person);
        using var stream = new MemoryStream(content, writable: false);
        return Name(stream, person, 0);
    }

    private static bool Name(Stream content, PersonTexts person, int deepest)
    {
        if (IsPartsNaming(content, person) is { } isNamed)
            return isNamed;
        content.Position = 0;
        if (IsWrittenIn(content, person))
            return true;
        // What is not packed comes back itself, even where it came out of a packed file.
        if (deepest == 0 || !PackedFile.Open(content, "").Succeeded(out var opened) || opened == content)
            return false;
        var unpacked = (UnpackedStream)opened;
        try
        {
            return Name(unpacked, person, deepest - 1);
        }
        finally
        {
            unpacked.DisposeAlone();
        }
    }

    private static bool IsWrittenIn(Stream content, PersonTexts person)
    {
        var look = new byte[Look + Overlap];
        for (var held = 0; content.ReadAtLeast(look.AsSpan(held), look.Length - held, throwOnEndOfStream: false) is > 0 and var read;)
        {
            var bytes = look.AsSpan(0, held + read);
            foreach (var encoding in Usual)
            {
                var text = Lenient(encoding).GetString(bytes);
                if (IsText(text) ? person.IsNamedIn(Plain(text)) : person.IsNamedAmongBytes(text))
                    return true;
            }

            // An even number of bytes, so that pairs stay pairs.
            held = Math.Min(Overlap, bytes.Length) & ~1;
            bytes[^held..].CopyTo(look);
        }

        return false;
    }

    private static bool IsText(string text) => 100L * text.Count(letter => letter == '\uFFFD' || (char.IsControl(letter) && !char.IsWhiteSpace(letter))) <= (long)StrangeInText * text.Length;

    /// <summary>Escapes of JSON and XML undone, so that a name is found however it is written.</summary>
    private static string Plain(string text) => Escape().Replace(text, match =>
        match.Groups["hex"].Success && int.TryParse(match.Groups["hex"].ValueSpan, System.Globalization.NumberStyles.HexNumber, null, out var hex) && Rune.IsValid(hex)
            ? new Rune(hex).ToString()
            : match.Groups["number"].Success && int.TryParse(match.Groups["number"].ValueSpan, out var number) && Rune.IsValid(number) ? new Rune(number).ToString() : match.Value);

    /// <summary>Whether names or parts of a package name the person; null where the bytes are no package, or a broken one, and are looked at as they are.</summary>
    private static bool? IsPartsNaming(Stream package, PersonTexts person)
    {
        Span<byte> start = stackalloc byte[2];
        if (package.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) < start.Length || !start.SequenceEqual("PK"u8))
            return null;
        try
        {
            using var zip = new ZipArchive(package, ZipArchiveMode.Read, leaveOpen: true);
            return person.IsNamedIn(zip.Comment) || zip.Entries.Any(entry => person.IsNamedIn(entry.FullName) || person.IsNamedIn(entry.Comment) || IsNamedIn(entry, person));
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static bool IsNamedIn(ZipArchiveEntry entry, PersonTexts person)
    {
        using var part = entry.Open();
        return IsWrittenIn(part, person);
    }

    private static Encoding Lenient(string name) => Encoding.GetEncoding(Encodings.Get(name).CodePage, EncoderFallback.ReplacementFallback, DecoderFallback.ReplacementFallback);

    [GeneratedRegex(@"\\u(?<hex>[0-9A-Fa-f]{4})|&#x(?<hex>[0-9A-Fa-f]{1,6});|&#(?<number>[0-9]{1,7});")]
    private static partial Regex Escape();
}
