namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>A file whose reads are done by the thread that asks, also where they are asked for asynchronously.</summary>
/// <remarks>The Parquet library reads asynchronously alone, and whoever reads here waits: each read would go to a thread of the pool and back, and where the pool's own
/// threads wait, to none for a while.</remarks>
internal sealed class BlockingFile(string path) : FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, BufferBytes)
{
    private const int BufferBytes = 1 << 16;

    /// <inheritdoc/>
    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        cancellationToken.ThrowIfCancellationRequested();
        return ValueTask.FromResult(Read(buffer.Span));
    }

    /// <inheritdoc/>
    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        return Task.FromResult(Read(buffer, offset, count));
    }
}
