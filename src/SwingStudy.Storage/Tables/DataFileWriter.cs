using System.Buffers.Binary;
using System.Security.Cryptography;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Tables.Columnar;
using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tables;

/// <summary>Writes one Parquet file of a table. Nothing counts before <see cref="Complete"/> and a commit; dispose without it and nothing
/// stays. Row groups are encoded on other threads while the caller makes the next rows; the bytes do not depend on that.</summary>
public sealed class DataFileWriter : IDisposable
{
    private const int HashDigits = 16;
    private static readonly byte[] Mark = "PAR1"u8.ToArray();
    private readonly TableDefinition _table;
    private readonly string _root;
    private readonly string? _partition;
    private readonly string _unit;
    private readonly string _originals;
    private readonly TimeProvider _time;
    private readonly string _temporary;
    private readonly FileStatistics _statistics;
    private readonly FileStream _stream;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly Queue<Task<EncodedGroup>> _encoding = new();
    private readonly List<(EncodedGroup Group, long Offset)> _groups = [];
    private long _length;

    internal DataFileWriter(TableDefinition table, string root, string? partition, string unit, string originals, TimeProvider time)
    {
        (_table, _root, _partition, _unit, _originals, _time) = (table, root, string.IsNullOrEmpty(partition) ? null : partition, unit, originals, time);
        _statistics = new FileStatistics(table);
        DurableFile.CreateFolder(root);
        _temporary = Path.Combine(root, DurableFile.TemporaryName());
        _stream = new FileStream(_temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 1);
        Write(Mark);
    }

    /// <summary>Rows so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Appends one row group; no rows append nothing.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="encoded">Is called, on another thread, when the rows are no longer needed: from then on their arrays may hold other rows.</param>
    /// <exception cref="ArgumentException">The rows are of another table or hold another partition; or, here or at a later call, a value cannot
    /// be stored: an infinite number, a moment outside the years 1 to 9999.</exception>
    public void Append(RowSet rows, Action? encoded = null)
    {
        if (!ReferenceEquals(rows.Table, _table) && !rows.Table.Columns.SequenceEqual(_table.Columns))
            throw new ArgumentException($"Rows of {rows.Table.Name} do not have the columns of {_table.Name}.", nameof(rows));
        if (rows.Count == 0)
            return;
        CheckPartition(rows);
        while (_encoding.Count >= Environment.ProcessorCount)
            WriteOldest();
        _encoding.Enqueue(Task.Run(() =>
        {
            var group = GroupEncoder.Encode(_table, rows);
            encoded?.Invoke();
            return group;
        }));
        Rows += rows.Count;
    }

    /// <summary>Finishes the file under a name made of partition, unit and the hash of its bytes. The commit flushes it to the device.</summary>
    /// <exception cref="IOException">No space or no right to write: nothing stays.</exception>
    public DataFile Complete()
    {
        while (_encoding.Count > 0)
            WriteOldest();
        WriteFooter();
        _stream.Dispose();
        var path = $"{LogPath.Folder(_table.PartitionColumn, _partition)}{LogPath.Safe(_unit)}-{Convert.ToHexStringLower(_hash.GetHashAndReset())[..HashDigits]}.parquet";
        var target = Path.Combine(_root, path);
        DurableFile.CreateFolder(Path.GetDirectoryName(target)!);
        // A file of that name holds these very bytes; a new date keeps it from being cleared away before the commit.
        if (!DurableFile.TryName(_temporary, target))
            File.SetLastWriteTimeUtc(target, _time.GetUtcNow().UtcDateTime);
        File.Delete(_temporary);
        return new DataFile(path, _partition, _unit, _length, Rows, _statistics.Json(), _time.GetUtcNow().ToUnixTimeMilliseconds()) { Originals = _originals };
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _encoding.Clear();
        _stream.Dispose();
        _hash.Dispose();
        File.Delete(_temporary);
    }

    private void WriteOldest()
    {
        var group = _encoding.Dequeue().GetAwaiter().GetResult();
        _statistics.Add(group);
        // Only the description is kept: the bytes are on disk.
        _groups.Add((group with { Chunks = [.. group.Chunks.Select(chunk => chunk.WithoutContent())] }, _length));
        foreach (var chunk in group.Chunks)
            Write(chunk.Content.Span);
    }

    private void WriteFooter()
    {
        var footer = ParquetFooter.Write(_table, _groups);
        Write(footer);
        Span<byte> length = stackalloc byte[sizeof(int)];
        BinaryPrimitives.WriteInt32LittleEndian(length, footer.Length);
        Write(length);
        Write(Mark);
    }

    private void Write(ReadOnlySpan<byte> bytes)
    {
        _stream.Write(bytes);
        _hash.AppendData(bytes);
        _length += bytes.Length;
    }

    private void CheckPartition(RowSet rows)
    {
        if (_table.PartitionColumn is not { } column)
            return;
        foreach (var value in rows.Texts(column))
        {
            if ((value ?? "") != (_partition ?? ""))
                throw new ArgumentException($"A row of {column} '{value}' does not belong in the file of '{_partition}'.", nameof(rows));
        }
    }
}
