using Parquet;
using Parquet.Serialization;
using SwingStudy.Storage.Tables.Columnar;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>The whole state of a table version as a Parquet file of actions.</summary>
internal static class CheckpointFile
{
    /// <summary>The bytes of the file, and how many actions it holds.</summary>
    internal static (byte[] Content, int Actions) Write(Snapshot snapshot)
    {
        var rows = Rows(snapshot).ToList();
        using var stream = new MemoryStream();
        // Every tenth commit waits for it: the quickest compression that all readers know.
        var options = new ParquetOptions { CompressionMethod = CompressionMethod.Snappy };
        ParquetSerializer.SerializeAsync(rows, stream, options).GetAwaiter().GetResult();
        return (stream.ToArray(), rows.Count);
    }

    /// <summary>The state back.</summary>
    /// <exception cref="InvalidDataException">The table asks for a newer reader, or the checkpoint holds no columns.</exception>
    internal static Snapshot Read(string path, long version)
    {
        using var stream = new BlockingFile(path);
        var reader = ParquetReader.CreateAsync(stream, null, leaveStreamOpen: true).GetAwaiter().GetResult();
        try
        {
            var read = new CheckpointState(path);
            for (var i = 0; i < reader.RowGroupCount; i++)
            {
                using var group = reader.OpenRowGroupReader(i);
                read.Add(new CheckpointColumns(group, reader.Schema));
            }

            return read.Snapshot(version);
        }
        finally
        {
            reader.DisposeAsync().AsTask().GetAwaiter().GetResult();
        }
    }

    private static IEnumerable<CheckpointRow> Rows(Snapshot snapshot)
    {
        var partitionColumn = snapshot.Definition.PartitionColumn;
        yield return new CheckpointRow { Protocol = new CheckpointProtocol { MinReaderVersion = 1, MinWriterVersion = 2 } };
        yield return new CheckpointRow
        {
            Metadata = new CheckpointMetadata
            {
                Id = snapshot.TableId,
                Name = snapshot.Definition.Name,
                Description = snapshot.Definition.RowMeaning,
                Format = new CheckpointFormat { Provider = "parquet", Options = [] },
                Schema = SchemaText.Write(snapshot.Definition),
                PartitionColumns = partitionColumn is null ? [] : [partitionColumn],
                Configuration = [],
                CreatedMillis = snapshot.CreatedMillis,
            },
        };
        foreach (var (application, number) in snapshot.Applications)
            yield return new CheckpointRow { Transaction = new CheckpointTransaction { Application = application, Number = number } };
        foreach (var (path, at) in snapshot.Removed)
            yield return new CheckpointRow { Remove = new CheckpointRemove { Path = LogPath.Encode(path), DeletedMillis = at } };
        foreach (var file in snapshot.Files.Values)
        {
            yield return new CheckpointRow
            {
                Add = new CheckpointAdd
                {
                    Path = LogPath.Encode(file.Path),
                    PartitionValues = partitionColumn is null ? [] : new() { [partitionColumn] = file.Partition },
                    Size = file.Size,
                    ModifiedMillis = file.ModifiedMillis,
                    Tags = file.Originals.Length == 0 ? new() { [CheckpointState.UnitTag] = file.Unit } : new() { [CheckpointState.UnitTag] = file.Unit, [CheckpointState.OriginalsTag] = file.Originals },
                    Statistics = file.Statistics,
                },
            };
        }
    }
}
