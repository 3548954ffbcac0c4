using Parquet;
using Parquet.Meta;
using Parquet.Schema;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Reads the asked columns of one Parquet file, row group by row group.</summary>
/// <param name="shape">Columns to deliver.</param>
/// <param name="table">The whole table, for columns that only the ranges need.</param>
/// <param name="ranges">What rows must fulfil.</param>
internal sealed class FileReader(TableDefinition shape, TableDefinition table, IReadOnlyList<RowRange> ranges)
{
    private readonly ColumnDefinition[] _rangeColumns = [.. ranges.Select(range => table[range.Column])];

    /// <summary>Whether the statistics in the log leave room for rows within the ranges.</summary>
    internal bool MayHoldRows(DataFile file) => ranges.All(range => FileStatistics.MayHold(file.Statistics, range));

    /// <summary>The rows, without empty sets.</summary>
    internal IEnumerable<RowSet> Read(string path, DataFile file)
    {
        using var stream = new BlockingFile(path);
        var reader = ParquetReader.CreateAsync(stream, null, leaveStreamOpen: true).GetAwaiter().GetResult();
        try
        {
            var fields = Fields(reader.Schema);
            for (var i = 0; i < reader.RowGroupCount; i++)
            {
                if (!MayHoldRows(reader.Metadata!.RowGroups[i]))
                    continue;
                using var group = reader.OpenRowGroupReader(i);
                var rows = ReadGroup(group, fields, file);
                if (rows.Count > 0)
                    yield return rows;
            }
        }
        finally
        {
            reader.DisposeAsync().AsTask().GetAwaiter().GetResult();
        }
    }

    private bool MayHoldRows(RowGroup group)
    {
        for (var i = 0; i < ranges.Count; i++)
        {
            if (!GroupBounds.MayHold(group, _rangeColumns[i].Kind, ranges[i]))
                return false;
        }

        return true;
    }

    /// <summary>Fields by which the library decodes the file's columns: those under which they were encoded.</summary>
    private Dictionary<string, DataField> Fields(ParquetSchema inFile)
    {
        var there = inFile.DataFields.Select(field => field.Path.FirstPart!).ToHashSet(StringComparer.Ordinal);
        var known = shape.Columns.Concat(_rangeColumns).DistinctBy(column => column.Name).Where(column => there.Contains(column.Name));
        return ParquetShape.EncodedSchema(table with { Columns = [.. known] }).DataFields.ToDictionary(field => field.Path.FirstPart!, StringComparer.Ordinal);
    }

    private RowSet ReadGroup(ParquetRowGroupReader group, Dictionary<string, DataField> fields, DataFile file)
    {
        var picked = RowsInRange(group, fields, file);
        if (picked is { Count: 0 })
            return RowSet.Empty(shape);
        var rows = new RowSet(shape, [.. shape.Columns.Select(column => Column(group, fields, file, column))]);
        return picked is null || picked.Count == rows.Count ? rows : rows.Select(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(picked));
    }

    private Column Column(ParquetRowGroupReader group, Dictionary<string, DataField> fields, DataFile file, ColumnDefinition column)
    {
        var rows = checked((int)group.RowCount);
        if (column.Name == table.PartitionColumn)
        {
            var values = new string?[rows];
            Array.Fill(values, file.Partition);
            return new TextColumn(values);
        }

        return fields.TryGetValue(column.Name, out var field)
            ? ColumnReader.Read(group, field, column)
            : Domain.Tables.Column.Missing(column.Kind, rows);
    }

    private List<int>? RowsInRange(ParquetRowGroupReader group, Dictionary<string, DataField> fields, DataFile file)
    {
        List<int>? picked = null;
        for (var i = 0; i < ranges.Count; i++)
        {
            var column = Column(group, fields, file, _rangeColumns[i]);
            var candidates = picked ?? [.. Enumerable.Range(0, column.Length)];
            var range = ranges[i];
            picked = candidates.FindAll(row => !column.IsMissing(row) && Value(column, row) is var value && value >= range.Low && value <= range.High);
            if (picked.Count == 0)
                return picked;
        }

        return picked;
    }

    private static double Value(Column column, int row) => column switch
    {
        NumberColumn numbers => numbers.Values[row],
        IntegerColumn integers => integers.Values[row]!.Value,
        InstantColumn instants => instants.UnixMillis[row],
        _ => throw new ArgumentException($"A range needs a column of numbers, integers or instants, not of {column.Kind}."),
    };
}
