using System.Buffers;
using System.Text;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Decodes a stream from its start, as much at a time as the caller has room for. The stream stays open.</summary>
internal sealed class TextSource : IDisposable
{
    private const int MostBytes = 256 * 1024;
    private readonly Stream _stream;
    private readonly HeldFile? _held;
    private readonly byte[] _bytes;
    private readonly Decoder _decoder;
    private readonly bool _isWindows1252;
    private int _at;
    private int _count;

    /// <summary>Starts behind the byte order mark.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="encoding">Its encoding.</param>
    /// <param name="characters">How many are wanted first, so that whoever looks at the beginning reads no more than that.</param>
    public TextSource(Stream stream, FoundEncoding encoding, int characters = MostBytes)
    {
        _stream = stream;
        _held = stream as HeldFile;
        _bytes = _held is null ? ArrayPool<byte>.Shared.Rent(Math.Min(characters, MostBytes)) : [];
        _decoder = encoding.Encoding.GetDecoder();
        _isWindows1252 = encoding.Name == Encodings.Fallback;
        stream.Position = encoding.MarkLength;
        if (_held is not null)
            (_at, _count) = (encoding.MarkLength, _held.Bytes.Length);
    }

    /// <summary>Whether the last read reached the end of the stream.</summary>
    public bool IsAtEnd { get; private set; }

    /// <summary>Fills <paramref name="characters"/> from its start; 0 at the end of the stream.</summary>
    /// <exception cref="DecoderFallbackException">A byte has no meaning in the encoding; never after <see cref="EncodingFinder"/> passed the file.</exception>
    public int Read(Span<char> characters)
    {
        var filled = 0;
        while (filled < characters.Length && !IsAtEnd)
        {
            if (_at == _count && _held is null)
            {
                _at = 0;
                _count = _stream.Read(_bytes);
            }

            var bytes = (_held is null ? _bytes : _held.Bytes)[_at.._count];
            if (_isWindows1252)
            {
                IsAtEnd = bytes.IsEmpty;
                var count = Math.Min(bytes.Length, characters.Length - filled);
                Widen(bytes[..count], characters.Slice(filled, count));
                _at += count;
                filled += count;
            }
            else
            {
                var flush = bytes.IsEmpty;
                if (characters.Length - filled < 2)
                    break;
                _decoder.Convert(bytes, characters[filled..], flush, out var used, out var written, out var completed);
                IsAtEnd = flush && completed;
                _at += used;
                filled += written;
            }
        }

        return filled;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_held is null)
            ArrayPool<byte>.Shared.Return(_bytes);
    }

    /// <summary>Windows-1252 is Latin-1 but for 0x80 to 0x9F.</summary>
    private static void Widen(ReadOnlySpan<byte> bytes, Span<char> characters)
    {
        Encoding.Latin1.GetChars(bytes, characters);
        var rest = characters;
        while (rest.IndexOfAnyInRange('\u0080', '\u009F') is var at and >= 0)
        {
            rest[at] = High1252.Characters[rest[at] - 0x80];
            rest = rest[(at + 1)..];
        }
    }

    /// <summary>Made when the first such byte is met: most files have none.</summary>
    private static class High1252
    {
        public static readonly char[] Characters = Encodings.Get(Encodings.Fallback).GetChars([.. Enumerable.Range(0x80, 0x20).Select(value => (byte)value)]);
    }
}
