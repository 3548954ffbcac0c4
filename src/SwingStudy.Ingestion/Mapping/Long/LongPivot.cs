using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Long;

/// <summary>An export with one row a reading, turned into one row a record: player, time and number as they stand, and a column for each reading's name.</summary>
internal sealed class LongPivot
{
    /// <summary>Heading of the column in which the pivot marks practice swings.</summary>
    public const string PracticeColumn = "row rule practice";
    private const int BlockRecords = 8192;
    private readonly IReadOnlyList<LongRecord> _records;
    private readonly IReadOnlyList<string> _keys;
    private readonly IReadOnlyList<string> _names;
    private readonly IReadOnlyList<MappedReject> _rejects;

    internal LongPivot(
        SheetShape shape,
        IReadOnlyList<string> keys,
        IReadOnlyList<string> names,
        IReadOnlyList<LongRecord> records,
        IReadOnlyList<MappedReject> rejects,
        IReadOnlyList<RejectedRecord> broken,
        IReadOnlyDictionary<string, long> notData)
    {
        Shape = shape;
        _keys = keys;
        _names = names;
        _records = records;
        _rejects = rejects;
        Broken = broken;
        NotData = notData;
    }

    /// <summary>The shape of the pivoted rows.</summary>
    public SheetShape Shape { get; }

    /// <summary>Records of the file that could not be divided into cells.</summary>
    public IReadOnlyList<RejectedRecord> Broken { get; }

    /// <summary>Lines that are no data, by label.</summary>
    public IReadOnlyDictionary<string, long> NotData { get; }

    /// <summary>Reads all readings, or tells what the mapping names in vain.</summary>
    public static Outcome<LongPivot> Read(RecordDocument document, SourceMapping mapping, LongForm form, SheetShape shape) =>
        new LongReading(mapping, form, shape).Read(document);

    /// <summary>The mapping as it applies to pivoted rows: rules about single readings are done with.</summary>
    public static SourceMapping Pivoted(SourceMapping mapping) => mapping with
    {
        NotData = [],
        Practice = mapping.Practice.Count == 0 ? [] : [new RowRule("practice", [new CellCondition(PracticeColumn, ["1"], null, null)])],
        Ignore = [.. mapping.Ignore, PracticeColumn],
    };

    /// <summary>The pivoted rows; the line of a row is the ordinal of its record.</summary>
    public IEnumerable<RawBlock> Blocks()
    {
        var columns = _keys.Count + _names.Count + 1;
        for (var from = 0; from < _records.Count; from += BlockRecords)
        {
            var upTo = Math.Min(from + BlockRecords, _records.Count);
            var block = new RawBlock(4096, (upTo - from) * columns, upTo - from) { ColumnCount = columns };
            var length = 0;
            for (var i = from; i < upTo; i++)
            {
                var (start, firstCell) = (length, block.CellCount);
                foreach (var cell in _records[i].Keys)
                    Add(block, cell, ref length);
                foreach (var name in _names)
                    Add(block, _records[i].Readings.TryGetValue(name, out var reading) ? reading.Cell : LongCell.Empty, ref length);
                Add(block, new LongCell(_records[i].IsPractice ? "1" : "", CellKind.Text, double.NaN), ref length);
                block.AddRow(start, length - start, firstCell, i + 1);
            }

            yield return block;
        }
    }

    /// <summary>Line in the file of the record with that ordinal.</summary>
    public int LineOf(int ordinal) => _records[ordinal - 1].Line;

    /// <summary>Readings of each record that were taken.</summary>
    public int[] LinesPerRow(IReadOnlyList<int> ordinals, IReadOnlyList<MappedReject> ofRecords)
    {
        var lost = ofRecords.Where(reject => !reject.IsRow && reject.Variable is not null).CountBy(reject => reject.Line).ToDictionary();
        return [.. ordinals.Select(ordinal => _records[ordinal - 1].Readings.Count - lost.GetValueOrDefault(ordinal))];
    }

    /// <summary>All rejects with the lines of the file, and how many lines they are: a lost record loses each of its readings.</summary>
    public (IReadOnlyList<MappedReject> Rejects, long Lines) Translate(IReadOnlyList<MappedReject> ofRecords, IReadOnlyDictionary<string, string> columnOfVariable)
    {
        var rejects = new List<MappedReject>(_rejects);
        long lines = _rejects.Count;
        foreach (var reject in ofRecords)
        {
            var record = _records[reject.Line - 1];
            if (reject.IsRow)
            {
                rejects.AddRange(record.Readings.Values.Select(reading => reject with { Line = reading.Line, Raw = reading.Raw }));
                lines += record.Readings.Count;
            }
            else if (reject.Variable is { } variable && columnOfVariable.TryGetValue(variable, out var column) && record.Readings.TryGetValue(column, out var reading))
            {
                rejects.Add(reject with { Line = reading.Line, RowLine = record.Line });
                lines++;
            }
            else
            {
                rejects.Add(reject with { Line = record.Line });
            }
        }

        return (rejects, lines);
    }

    private static void Add(RawBlock block, LongCell cell, ref int length)
    {
        var start = length;
        block.Append(cell.Text, ref length);
        block.AddCell(start, cell.Text.Length, cell.Kind, cell.Number);
    }
}
