using System.Text;

namespace SwingStudy.Ingestion.Tests.Readers.Delimited;

/// <summary>A large file that is never in memory: a head, a repeated text, a tail.</summary>
internal sealed class GeneratedStream : Stream
{
    private readonly byte[] _head;
    private readonly byte[] _repeated;
    private readonly byte[] _tail;
    private readonly long _middle;

    public GeneratedStream(string head, string repeated, long size, string tail)
    {
        _head = Encoding.UTF8.GetBytes(head);
        _repeated = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(repeated, 5000)));
        _tail = Encoding.UTF8.GetBytes(tail);
        _middle = size / repeated.Length * repeated.Length;
    }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => _head.Length + _middle + _tail.Length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var count = (int)Math.Min(buffer.Length, Length - Position);
        for (var filled = 0; filled < count;)
        {
            var inMiddle = Position - _head.Length;
            var part = inMiddle < 0 ? _head.AsSpan((int)Position)
                : inMiddle < _middle ? _repeated.AsSpan((int)(inMiddle % _repeated.Length), (int)Math.Min(_repeated.Length - (inMiddle % _repeated.Length), _middle - inMiddle))
                : _tail.AsSpan((int)(inMiddle - _middle));
            part = part[..Math.Min(part.Length, count - filled)];
            part.CopyTo(buffer[filled..]);
            filled += part.Length;
            Position += part.Length;
        }

        return count;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => Length + offset,
    };

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
