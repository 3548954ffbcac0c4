using System.Security.Cryptography;
using Parquet;
using Parquet.Schema;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Tables.Columnar;
using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tables;

/// <summary>Writes one Parquet file of a table. Nothing counts before <see cref="Complete"/> and a commit; dispose without it and nothing stays.</summary>
public sealed class DataFileWriter : IDisposable
{
    private readonly TableDefinition _table;
    private readonly string _root;
    private readonly string? _partition;
    private readonly string _unit;
    private readonly TimeProvider _time;
    private readonly string _temporary;
    private readonly FileStatistics _statistics;
    private readonly DataField[] _fields;
    private readonly FileStream _stream;
    private readonly ParquetWriter _parquet;
    private bool _closed;

    internal DataFileWriter(TableDefinition table, string root, string? partition, string unit, TimeProvider time)
    {
        (_table, _root, _partition, _unit, _time) = (table, root, partition, unit, time);
        _statistics = new FileStatistics(table);
        DurableFile.CreateFolder(root);
        _temporary = Path.Combine(root, $".{Guid.NewGuid():N}.tmp");
        _stream = new FileStream(_temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, bufferSize: 1 << 20);
        var schema = ParquetShape.Schema(table);
        _fields = schema.DataFields;
        _parquet = ParquetWriter.CreateAsync(schema, _stream, Options(table)).GetAwaiter().GetResult();
    }

    /// <summary>Rows so far.</summary>
    public long Rows => _statistics.Rows;

    /// <summary>Appends one row group.</summary>
    /// <exception cref="ArgumentException">The rows are of another table or hold another partition.</exception>
    public void Append(RowSet rows)
    {
        if (!ReferenceEquals(rows.Table, _table) && !rows.Table.Columns.SequenceEqual(_table.Columns))
            throw new ArgumentException($"Rows of {rows.Table.Name} do not have the columns of {_table.Name}.", nameof(rows));
        if (rows.Count == 0)
            return;
        CheckPartition(rows);
        _statistics.Add(rows);
        using var group = _parquet.CreateRowGroup();
        for (var i = 0; i < _fields.Length; i++)
            ColumnWriter.Write(group, _fields[i], rows.Columns[i]);
        group.CompleteValidate();
    }

    /// <summary>Finishes the file under a name made of partition, unit and the hash of its bytes, flushed to the device.</summary>
    public DataFile Complete()
    {
        Close();
        string hash;
        using (var written = File.OpenRead(_temporary))
            hash = Convert.ToHexStringLower(SHA256.HashData(written))[..16];
        DurableFile.Sync(_temporary);
        var path = $"{LogPath.Folder(_table.PartitionColumn, _partition)}{LogPath.Safe(_unit)}-{hash}.parquet";
        var target = Path.Combine(_root, path);
        DurableFile.CreateFolder(Path.GetDirectoryName(target)!);
        // A file of that name holds these very bytes; a new date keeps it from being cleared away before the commit.
        if (!DurableFile.TryName(_temporary, target))
            File.SetLastWriteTimeUtc(target, _time.GetUtcNow().UtcDateTime);
        var size = new FileInfo(target).Length;
        File.Delete(_temporary);
        return new DataFile(path, string.IsNullOrEmpty(_partition) ? null : _partition, _unit, size, _statistics.Rows, _statistics.Json(),
            _time.GetUtcNow().ToUnixTimeMilliseconds());
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Close();
        File.Delete(_temporary);
    }

    private static ParquetOptions Options(TableDefinition table)
    {
        var options = new ParquetOptions { CompressionMethod = CompressionMethod.Zstd, CompressionLevel = System.IO.Compression.CompressionLevel.Optimal };
        foreach (var column in table.Columns.Where(column => column.Kind == ColumnKind.Text))
            options.ColumnEncodingHints[column.Name] = EncodingHint.Dictionary;
        return options;
    }

    private void Close()
    {
        if (_closed)
            return;
        _closed = true;
        _parquet.DisposeAsync().AsTask().GetAwaiter().GetResult();
        _stream.Dispose();
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
