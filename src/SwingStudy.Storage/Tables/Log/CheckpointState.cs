using System.Collections.Immutable;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Gathers the state of a table from the actions of a checkpoint.</summary>
/// <param name="path">The checkpoint, for messages.</param>
internal sealed class CheckpointState(string path)
{
    /// <summary>Tag of a file that names its unit of work.</summary>
    internal const string UnitTag = "unit";

    /// <summary>Tag of a file that names its originals.</summary>
    internal const string OriginalsTag = "originals";

    private readonly ImmutableSortedDictionary<string, DataFile>.Builder _files = ImmutableSortedDictionary.CreateBuilder<string, DataFile>(StringComparer.Ordinal);
    private readonly ImmutableSortedDictionary<string, long>.Builder _removed = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
    private readonly ImmutableSortedDictionary<string, long>.Builder _applications = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
    private TableMetadata? _table;

    /// <summary>Takes the actions of one row group.</summary>
    /// <exception cref="InvalidDataException">The table asks for a newer reader, or a column holds another type than the protocol says.</exception>
    public void Add(CheckpointColumns columns)
    {
        foreach (var least in columns.Numbers("protocol/minReaderVersion").OfType<long>())
            LogEntryReader.CheckReader(path, checked((int)least));
        AddFiles(columns);
        var (removed, deleted) = (columns.Texts("remove/path"), columns.Numbers("remove/deletionTimestamp"));
        var (applications, numbers) = (columns.Texts("txn/appId"), columns.Numbers("txn/version"));
        var ids = columns.Texts("metaData/id");
        for (var row = 0; row < columns.Rows; row++)
        {
            if (removed[row] is { } file)
                _removed[LogPath.Decode(file)] = deleted[row] ?? 0;
            else if (applications[row] is { } application)
                _applications[application] = numbers[row] ?? 0;
            else if (ids[row] is { } id)
                _table = Metadata(columns, row, id);
        }
    }

    /// <summary>The state of that version.</summary>
    /// <exception cref="InvalidDataException">The checkpoint holds no columns.</exception>
    public Snapshot Snapshot(long version) => _table is null
        ? throw new InvalidDataException($"The checkpoint {path} holds no columns.")
        : new Snapshot(version, _table.Id, _table.CreatedMillis, _table.Definition(new TableDefinition("", "", [], null)), _files.ToImmutable(), _removed.ToImmutable(), _applications.ToImmutable());

    private void AddFiles(CheckpointColumns columns)
    {
        var (paths, partitions, tags) = (columns.Texts("add/path"), columns.Maps("add/partitionValues"), columns.Maps("add/tags"));
        var (sizes, modified, statistics) = (columns.Numbers("add/size"), columns.Numbers("add/modificationTime"), columns.Texts("add/stats"));
        for (var row = 0; row < columns.Rows; row++)
        {
            if (paths[row] is not { } encoded)
                continue;
            var decoded = LogPath.Decode(encoded);
            _files[decoded] = new DataFile(
                decoded, partitions[row].Values.FirstOrDefault() is { Length: > 0 } partition ? partition : null, tags[row].GetValueOrDefault(UnitTag) ?? "",
                sizes[row] ?? 0, LogEntryReader.Rows(statistics[row]), statistics[row] ?? "{}", modified[row] ?? 0)
            {
                Originals = tags[row].GetValueOrDefault(OriginalsTag) ?? "",
            };
        }
    }

    private static TableMetadata Metadata(CheckpointColumns columns, int row, string id) => new(
        id, columns.Texts("metaData/name")[row] ?? "", columns.Texts("metaData/description")[row] ?? "", columns.Texts("metaData/schemaString")[row]!,
        columns.Lists("metaData/partitionColumns")[row] is [{ } column, ..] ? column : null, columns.Numbers("metaData/createdTime")[row] ?? 0);
}
