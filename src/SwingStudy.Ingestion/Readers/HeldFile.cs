using System.Buffers;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The bytes of a small file in pooled memory: a file is read several times (for its form, its encoding, its rows), and so from the disk but once.</summary>
internal sealed class HeldFile : MemoryStream
{
    private byte[] _rented;

    private HeldFile(byte[] rented, int length)
        : base(rented, 0, length, writable: false) => _rented = rented;

    /// <summary>All of them, wherever the stream stands.</summary>
    /// <exception cref="ObjectDisposedException">The file is closed.</exception>
    public ReadOnlySpan<byte> Bytes => _rented.AsSpan(0, (int)Length);

    /// <summary>Reads a file whole and closes it.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static HeldFile Of(FileStream file)
    {
        using (file)
        {
            var rented = ArrayPool<byte>.Shared.Rent((int)file.Length);
            return new HeldFile(rented, file.ReadAtLeast(rented, (int)file.Length, throwOnEndOfStream: false));
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (_rented.Length > 0)
            ArrayPool<byte>.Shared.Return(_rented);
        _rented = [];
    }
}
