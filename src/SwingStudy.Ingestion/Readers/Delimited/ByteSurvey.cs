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
        var tally = new Tally();
        if (stream is HeldFile held)
            tally.Add(held.Bytes);
        else
            Read(stream, tally);
        return new ByteSurvey(tally.IsUtf8, tally.Even + tally.Odd > 0, tally.Total % 2 == 0 ? Utf16(tally) : null);
    }

    private static void Read(Stream stream, Tally tally)
    {
        stream.Position = 0;
        var buffer = ArrayPool<byte>.Shared.Rent(ChunkBytes);
        var kept = 0;
        try
        {
            while (true)
            {
                var count = kept + stream.ReadAtLeast(buffer.AsSpan(kept), buffer.Length - kept, throwOnEndOfStream: false);
                var isLast = count < buffer.Length;
                var end = isLast ? count : count - Unfinished(buffer.AsSpan(0, count));
                tally.Add(buffer.AsSpan(0, end));
                if (isLast)
                    return;
                kept = count - end;
                buffer.AsSpan(end, kept).CopyTo(buffer);
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>Latin text in UTF-16 has a zero in nearly each second byte, all on one side.</summary>
    private static string? Utf16(Tally tally)
    {
        const double share = 0.4;
        if (tally.Odd > share * tally.Total && tally.Even == 0)
            return "utf-16";
        return tally.Even > share * tally.Total && tally.Odd == 0 ? "utf-16BE" : null;
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

    /// <summary>What the pieces of a file say together.</summary>
    private sealed class Tally
    {
        public bool IsUtf8 { get; private set; } = true;

        /// <summary>Bytes so far.</summary>
        public long Total { get; private set; }

        /// <summary>Zeros at even places.</summary>
        public long Even { get; private set; }

        /// <summary>Zeros at odd places.</summary>
        public long Odd { get; private set; }

        /// <summary>Adds a piece that no character goes beyond.</summary>
        public void Add(ReadOnlySpan<byte> piece)
        {
            IsUtf8 = IsUtf8 && Utf8.IsValid(piece);
            for (var at = piece.IndexOf((byte)0); at >= 0 && at < piece.Length; at++)
            {
                if (piece[at] == 0 && ((Total + at) & 1) == 0)
                    Even++;
                else if (piece[at] == 0)
                    Odd++;
            }

            Total += piece.Length;
        }
    }
}
