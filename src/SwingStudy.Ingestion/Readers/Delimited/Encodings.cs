using System.Diagnostics.CodeAnalysis;
using System.Text;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Encodings by name and by byte order mark; all of them throw at bytes that have no meaning in them.</summary>
internal static class Encodings
{
    /// <summary>Name of the fallback for text that is no UTF-8.</summary>
    public const string Fallback = "windows-1252";

    private const string Utf8 = "utf-8";

    private static readonly (byte[] Mark, string Name)[] Marks =
    [
        ([0xEF, 0xBB, 0xBF], "utf-8"),
        ([0xFF, 0xFE, 0x00, 0x00], "utf-32"),
        ([0x00, 0x00, 0xFE, 0xFF], "utf-32BE"),
        ([0xFF, 0xFE], "utf-16"),
        ([0xFE, 0xFF], "utf-16BE"),
    ];

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true);

    /// <summary>The strict encoding of an IANA name.</summary>
    public static bool TryGet(string name, [NotNullWhen(true)] out Encoding? encoding)
    {
        // Nearly all files are UTF-8, which needs none of the old code pages and no search among names.
        encoding = StrictUtf8;
        if (name == Utf8)
            return true;
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        try
        {
            encoding = Encoding.GetEncoding(name.Trim(), EncoderFallback.ExceptionFallback, DecoderFallback.ExceptionFallback);
            return true;
        }
        catch (ArgumentException)
        {
            encoding = null;
            return false;
        }
    }

    /// <summary>The strict encoding of a name that is known to exist.</summary>
    public static Encoding Get(string name) =>
        TryGet(name, out var encoding) ? encoding : throw new InvalidOperationException($"The runtime lacks the encoding '{name}'.");

    /// <summary>The encoding that a byte order mark names, and the mark's length.</summary>
    public static (string Name, int Length)? ByMark(ReadOnlySpan<byte> start)
    {
        foreach (var (mark, name) in Marks)
        {
            if (start.StartsWith(mark))
                return (name, mark.Length);
        }

        return null;
    }
}
