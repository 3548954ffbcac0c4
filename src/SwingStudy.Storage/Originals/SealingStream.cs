using System.Security.Cryptography;

namespace SwingStudy.Storage.Originals;

/// <summary>Encrypts what is written to it, in the form of <see cref="SealedFile"/>. <see cref="Complete"/> ends the file; without it, it cannot be opened.</summary>
internal sealed class SealingStream : Stream
{
    private readonly Stream _to;
    private readonly AesGcm _aes;
    private readonly byte[] _block = new byte[SealedFile.BlockBytes];
    private readonly byte[] _sealed = new byte[SealedFile.TagBytes + SealedFile.BlockBytes];
    private int _filled;
    private long _number;

    /// <summary>Starts a file.</summary>
    /// <param name="to">Where it is written; stays open.</param>
    /// <param name="publicKey">The study's public key.</param>
    internal SealingStream(Stream to, byte[] publicKey)
    {
        _to = to;
        var (key, head) = SealedFile.New(publicKey);
        _aes = new AesGcm(key, SealedFile.TagBytes);
        _to.Write(head);
    }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        while (buffer.Length > 0)
        {
            // The last block is always short, and may be empty: so its length tells it from the others.
            var part = buffer[..Math.Min(buffer.Length, _block.Length - _filled)];
            part.CopyTo(_block.AsSpan(_filled));
            _filled += part.Length;
            buffer = buffer[part.Length..];
            if (_filled == _block.Length)
                WriteBlock(isLast: false);
        }
    }

    /// <summary>Writes the last block.</summary>
    internal void Complete() => WriteBlock(isLast: true);

    public override void Flush() => _to.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            _aes.Dispose();
        base.Dispose(disposing);
    }

    private void WriteBlock(bool isLast)
    {
        Span<byte> nonce = stackalloc byte[12];
        SealedFile.Nonce(nonce, _number++, isLast);
        _aes.Encrypt(nonce, _block.AsSpan(0, _filled), _sealed.AsSpan(SealedFile.TagBytes, _filled), _sealed.AsSpan(0, SealedFile.TagBytes));
        _to.Write(_sealed, 0, SealedFile.TagBytes + _filled);
        _filled = 0;
    }
}
