using System.Collections.Immutable;
using Parquet;
using Parquet.Serialization;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>The whole state of a table version as a Parquet file of actions.</summary>
internal static class CheckpointFile
{
    private const string UnitTag = "unit";
    private const string OriginalsTag = "originals";

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
        using var stream = System.IO.File.OpenRead(path);
        var rows = ParquetSerializer.DeserializeAsync<CheckpointRow>(stream).GetAwaiter().GetResult().Data;
        var files = ImmutableSortedDictionary.CreateBuilder<string, DataFile>(StringComparer.Ordinal);
        var removed = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        var applications = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        TableMetadata? table = null;
        foreach (var row in rows)
        {
            if (row.Add is { Path: not null } add)
                files[LogPath.Decode(add.Path)] = File(add);
            else if (row.Remove is { Path: not null } remove)
                removed[LogPath.Decode(remove.Path)] = remove.DeletedMillis;
            else if (row.Transaction is { Application: not null } transaction)
                applications[transaction.Application] = transaction.Number;
            else if (row.Metadata is { Id: not null } metadata)
                table = Metadata(metadata);
            else if (row.Protocol is { } protocol)
                LogEntryReader.CheckReader(path, protocol.MinReaderVersion);
        }

        if (table is null)
            throw new InvalidDataException($"The checkpoint {path} holds no columns.");
        return new Snapshot(version, table.Id, table.CreatedMillis, table.Definition(new TableDefinition("", "", [], null)),
            files.ToImmutable(), removed.ToImmutable(), applications.ToImmutable());
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
                    Tags = file.Originals.Length == 0 ? new() { [UnitTag] = file.Unit } : new() { [UnitTag] = file.Unit, [OriginalsTag] = file.Originals },
                    Statistics = file.Statistics,
                },
            };
        }
    }

    private static DataFile File(CheckpointAdd add) => new(LogPath.Decode(add.Path!),
        add.PartitionValues?.Values.FirstOrDefault() is { Length: > 0 } partition ? partition : null,
        add.Tags?.GetValueOrDefault(UnitTag) ?? "", add.Size, LogEntryReader.Rows(add.Statistics), add.Statistics ?? "{}", add.ModifiedMillis)
    {
        Originals = add.Tags?.GetValueOrDefault(OriginalsTag) ?? "",
    };

    private static TableMetadata Metadata(CheckpointMetadata metadata) => new(metadata.Id!, metadata.Name ?? "", metadata.Description ?? "",
        metadata.Schema!, metadata.PartitionColumns?.FirstOrDefault(), metadata.CreatedMillis);
}
