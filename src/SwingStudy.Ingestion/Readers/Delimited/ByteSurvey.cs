using System.Buffers;
using System.Text.Unicode;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>What all bytes of a file without a mark say about its encoding.</summary>
/// <param name="IsUtf8">All of them are well-formed UTF-8.</param>
/// <param name="HasZeroBytes">Some are zero, which text in a one-byte encoding or UTF-8 never is.</param>
/// <param name="Utf16Name">Name of UTF-16 when zero bytes stand where the high bytes of Latin letters would.</param>
internal sealed record ByteSurvey(bool IsUtf8, bool HasZeroBytes, string? Utf16Name)
{
    private const int ChunkBytes = 1 << 19;

    /// <summary>Reads the stream from its start to its end.</summary>
    public static ByteSurvey Of(Stream stream)
    {
        var buffer = ArrayPool<byte>.Shared.Rent(ChunkBytes);
        try
        {
            return Of(stream, buffer);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static ByteSurvey Of(Stream stream, byte[] buffer)
    {
        stream.Position = 0;
        var kept = 0;
        var valid = true;
        long even = 0, odd = 0, total = 0;
        while (true)
        {
            var count = kept + stream.ReadAtLeast(buffer.AsSpan(kept), buffer.Length - kept, throwOnEndOfStream: false);
            var isLast = count < buffer.Length;
            var end = isLast ? count : count - Unfinished(buffer.AsSpan(0, count));
            var whole = buffer.AsSpan(0, end);
            valid = valid && Utf8.IsValid(whole);
            if (whole.Contains((byte)0))
            {
                for (var i = 0; i < whole.Length; i++)
                {
                    if (whole[i] == 0 && ((total + i) & 1) == 0)
                        even++;
                    else if (whole[i] == 0)
                        odd++;
                }
            }

            total += end;
            if (isLast)
                break;
            kept = count - end;
            buffer.AsSpan(end, kept).CopyTo(buffer);
        }

        return new ByteSurvey(valid, even + odd > 0, total % 2 == 0 ? Utf16(even, odd, total) : null);
    }

    /// <summary>Latin text in UTF-16 has a zero in nearly each second byte, all on one side.</summary>
    private static string? Utf16(long even, long odd, long total)
    {
        const double share = 0.4;
        if (odd > share * total && even == 0)
            return "utf-16";
        return even > share * total && odd == 0 ? "utf-16BE" : null;
    }

    /// <summary>Bytes at the end that begin a character which ends in the next piece.</summary>
    private static int Unfinished(ReadOnlySpan<byte> bytes)
    {
        for (var back = 1; back <= 3 && back <= bytes.Length; back++)
        {
            var value = bytes[^back];
            if ((value & 0xC0) == 0x80)
                continue;
            var needed = value >= 0xF0 ? 4 : value >= 0xE0 ? 3 : value >= 0xC0 ? 2 : 1;
            return needed > back ? back : 0;
        }

        return 0;
    }
}
