using System.IO.Compression;
using System.Text;
using ZstdSharp;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>Searches every byte of a folder: files as they are, in the encodings in which a text may stand; the parts of packages; and what every
/// compressed page of a Parquet file holds once it is decompressed (frames of RFC 8878, found by their magic number).</summary>
internal static class Traces
{
    private static readonly byte[] Frame = [0x28, 0xB5, 0x2F, 0xFD];

    /// <summary>Each place where one of the texts stands, or one of the numbers as text or as the eight bytes of a double.</summary>
    public static List<string> Of(string folder, IReadOnlyList<string> texts, IReadOnlyList<double> numbers)
    {
        var found = new List<string>();
        string[] all = [.. texts, .. numbers.Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))];
        foreach (var file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories))
        {
            var relative = Path.GetRelativePath(folder, file);
            found.AddRange(all.Where(text => relative.Contains(text, StringComparison.OrdinalIgnoreCase)).Select(text => $"{relative}: '{text}' in its name"));
            foreach (var (part, content) in Views(Read(file)))
            {
                found.AddRange(all.Where(text => Holds(content, text)).Select(text => $"{relative}{part}: '{text}'"));
                found.AddRange(numbers.Where(number => content.AsSpan().IndexOf(BitConverter.GetBytes(number)) >= 0).Select(number => FormattableString.Invariant($"{relative}{part}: {number} as a double")));
            }
        }

        return found;
    }

    /// <summary>A file as it is, and everything in it that is compressed.</summary>
    private static IEnumerable<(string Part, byte[] Content)> Views(byte[] content)
    {
        yield return ("", content);
        if (content.AsSpan().StartsWith("PK"u8))
        {
            foreach (var (name, part) in Parts(content))
                yield return ("/" + name, part);
        }

        for (var at = 0; at < content.Length && content.AsSpan(at).IndexOf(Frame) is var next and >= 0; at += next + Frame.Length)
            yield return (FormattableString.Invariant($"@{at + next}"), Decompressed(content, at + next));
    }

    private static bool Holds(byte[] content, string text)
    {
        // Names are compared as bytes, once as they are and once in capitals and small letters, as exports spell them.
        foreach (var spelt in new[] { text, text.ToUpperInvariant(), text.ToLowerInvariant() }.Distinct())
        {
            byte[][] written = [Encoding.UTF8.GetBytes(spelt), Encoding.Latin1.GetBytes(spelt), Encoding.Unicode.GetBytes(spelt), Encoding.BigEndianUnicode.GetBytes(spelt), Encoding.UTF8.GetBytes(Escaped(spelt))];
            if (written.Any(bytes => content.AsSpan().IndexOf(bytes) >= 0))
                return true;
        }

        return false;
    }

    private static string Escaped(string text) => string.Concat(text.Select(letter => char.IsAscii(letter) ? letter.ToString() : $"\\u{(int)letter:X4}"));

    private static IEnumerable<(string Name, byte[] Content)> Parts(byte[] package)
    {
        using var zip = new ZipArchive(new MemoryStream(package), ZipArchiveMode.Read);
        foreach (var entry in zip.Entries)
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            yield return (entry.FullName, bytes.ToArray());
        }
    }

    /// <summary>The content of the frame that begins there; what follows it is no frame, and ends the reading.</summary>
    private static byte[] Decompressed(byte[] content, int at)
    {
        using var frame = new DecompressionStream(new MemoryStream(content, at, content.Length - at));
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        try
        {
            for (int count; (count = frame.Read(buffer)) > 0;)
                bytes.Write(buffer, 0, count);
        }
        catch (Exception end) when (end is ZstdException or EndOfStreamException)
        {
            return bytes.ToArray();
        }

        return bytes.ToArray();
    }

    private static byte[] Read(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
