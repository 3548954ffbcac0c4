using System.Diagnostics.CodeAnalysis;
using System.Text;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Encodings by name and by byte order mark; all of them throw at bytes that have no meaning in them.</summary>
internal static class Encodings
{
    /// <summary>Name of the fallback for text that is no UTF-8.</summary>
    public const string Fallback = "windows-1252";

    private static readonly (byte[] Mark, string Name)[] Marks =
    [
        ([0xEF, 0xBB, 0xBF], "utf-8"),
        ([0xFF, 0xFE, 0x00, 0x00], "utf-32"),
        ([0x00, 0x00, 0xFE, 0xFF], "utf-32BE"),
        ([0xFF, 0xFE], "utf-16"),
        ([0xFE, 0xFF], "utf-16BE"),
    ];

    static Encodings() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>The strict encoding of an IANA name.</summary>
    public static bool TryGet(string name, [NotNullWhen(true)] out Encoding? encoding)
    {
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
