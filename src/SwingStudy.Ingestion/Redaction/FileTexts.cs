using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Looks for a person in bytes of which nothing is known.</summary>
internal static partial class FileTexts
{
    private static readonly string[] Usual = ["utf-8", "windows-1252", "utf-16", "utf-16BE"];

    /// <summary>Whether the person is named in the bytes, read as text in each usual encoding, or in a part of a zip package.</summary>
    public static bool Name(byte[] content, PersonTexts person) =>
        Usual.Any(encoding => person.IsNamedIn(Plain(Lenient(encoding).GetString(content)))) || (IsZip(content) && Parts(content).Any(part => Name(part, person)));

    /// <summary>Escapes of JSON and XML undone, so that a name is found however it is written.</summary>
    private static string Plain(string text) => Escape().Replace(text, match =>
        match.Groups["hex"].Success && int.TryParse(match.Groups["hex"].ValueSpan, System.Globalization.NumberStyles.HexNumber, null, out var hex) && Rune.IsValid(hex)
            ? new Rune(hex).ToString()
            : match.Groups["number"].Success && int.TryParse(match.Groups["number"].ValueSpan, out var number) && Rune.IsValid(number) ? new Rune(number).ToString() : match.Value);

    private static bool IsZip(byte[] content) => content.AsSpan().StartsWith("PK"u8);

    private static List<byte[]> Parts(byte[] package)
    {
        var parts = new List<byte[]>();
        try
        {
            using var zip = new ZipArchive(new MemoryStream(package, writable: false), ZipArchiveMode.Read);
            foreach (var entry in zip.Entries)
            {
                using var stream = entry.Open();
                using var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                parts.Add(bytes.ToArray());
            }
        }
        catch (InvalidDataException)
        {
            // No package, or a broken one: its bytes were looked at as they are.
            return parts;
        }

        return parts;
    }

    private static Encoding Lenient(string name) => Encoding.GetEncoding(Encodings.Get(name).CodePage, EncoderFallback.ReplacementFallback, DecoderFallback.ReplacementFallback);

    [GeneratedRegex(@"\\u(?<hex>[0-9A-Fa-f]{4})|&#x(?<hex>[0-9A-Fa-f]{1,6});|&#(?<number>[0-9]{1,7});")]
    private static partial Regex Escape();
}
