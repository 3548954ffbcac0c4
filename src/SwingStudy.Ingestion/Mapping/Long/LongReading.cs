using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Long;

/// <summary>Collects the readings of a file into records.</summary>
internal sealed class LongReading
{
    private readonly SourceMapping _mapping;
    private readonly LongForm _form;
    private readonly SheetShape _shape;
    private readonly List<Problem> _problems = [];
    private readonly List<LongRecord> _records = [];
    private readonly Dictionary<string, LongRecord> _byKey = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _unitOf = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _names = [];
    private readonly HashSet<string> _knownNames = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<MappedReject> _rejects = [];
    private readonly List<RejectedRecord> _broken = [];
    private readonly Dictionary<string, long> _notData = new(StringComparer.Ordinal);

    public LongReading(SourceMapping mapping, LongForm form, SheetShape shape)
    {
        _mapping = mapping;
        _form = form;
        _shape = shape;
    }

    public Outcome<LongPivot> Read(RecordDocument document)
    {
        var keys = KeyColumns();
        var name = Column(_form.NameColumn, "the reading's name");
        var value = Column(_form.ValueColumn, "the reading's value");
        var unit = _form.UnitColumn is { } column ? Column(column, "the reading's unit") : -1;
        var missing = new MissingTokens(_mapping.Missing, []);
        var notData = new RowClassifier(_mapping.NotData, heading => Column(heading, "a row rule"), missing);
        var practice = new RowClassifier(_mapping.Practice, heading => Column(heading, "a row rule"), missing);
        if (_problems.Count > 0)
            return Outcome<LongPivot>.Failed(_problems);
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                TakeBroken(block, notData);
                for (var row = 0; row < block.RowCount; row++)
                {
                    if (notData.Label(block, row) is { } label)
                        Count(label);
                    else
                        Take(block, row, keys, name, value, unit, practice);
                }
            }
        }

        SetUnmappedAside();
        return _problems.Count > 0 ? Outcome<LongPivot>.Failed(_problems) : Pivot(keys);
    }

    private LongPivot Pivot(List<Heading> keys)
    {
        string[] keyTexts = [.. keys.Select(heading => heading.Text)];
        string[] texts = [.. keyTexts, .. _names, LongPivot.PracticeColumn];
        string[] units = [.. keys.Select(heading => heading.Unit ?? ""), .. _names.Select(reading => _unitOf.GetValueOrDefault(reading, "")), ""];
        return new LongPivot(_shape with { Columns = HeadingRow.From(texts, units) }, keyTexts, _names, _records, _rejects, _broken, _notData);
    }

    private List<Heading> KeyColumns()
    {
        FieldSource?[] fields = [_mapping.Participant, .. _mapping.Time.Parts, _mapping.Sequence, _mapping.Phase];
        var keys = new List<Heading>();
        foreach (var field in fields)
        {
            if (field?.Column is not { } column)
                continue;
            if (_shape.Columns.Find(column) is not { } heading)
                _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, "the record's key", field.Line));
            else if (!keys.Contains(heading))
                keys.Add(heading);
        }

        return keys;
    }

    private int Column(string column, string use)
    {
        if (_shape.Columns.Find(column) is { } heading)
            return heading.Position;
        _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, use, null));
        return 0;
    }

    private void TakeBroken(RawBlock block, RowClassifier notData)
    {
        foreach (var record in block.Rejected)
        {
            if (notData.Label(record.Cells) is { } label)
                Count(label);
            else
                _rejects.Add(new MappedReject(record.Line, record.Raw, record.Problem.Code, record.Problem.Expected, true, null, null));
        }
    }

    private void Take(RawBlock block, int row, List<Heading> keys, int nameColumn, int valueColumn, int unitColumn, RowClassifier practice)
    {
        var line = block.Line(row);
        var raw = block.Raw(row).ToString();
        var name = CellText.Trim(block.Cell(row, nameColumn)).ToString();
        if (name.Length == 0)
        {
            _rejects.Add(new MappedReject(line, raw, RejectReason.Unparsable, "the name of a reading", true, _form.NameColumn, null));
            return;
        }

        LongCell[] cells = [.. keys.Select(heading => CellOf(block, row, heading.Position))];
        var key = string.Join('\u001F', cells.Select(cell => cell.Text));
        if (!_byKey.TryGetValue(key, out var record))
        {
            record = new LongRecord(line, cells);
            _byKey.Add(key, record);
            _records.Add(record);
        }

        record.IsPractice |= !practice.IsEmpty && practice.Label(block, row) is not null;
        var cellOfValue = CellOf(block, row, valueColumn);
        if (record.Readings.TryGetValue(name, out var earlier))
        {
            if (earlier.Cell.Text == cellOfValue.Text)
                Count("repeat");
            else
                _rejects.Add(new MappedReject(line, raw, RejectReason.ReadingTwice, "one reading of each name in a record", true, _form.ValueColumn, null));
            return;
        }

        record.Readings.Add(name, new LongReadingCell(cellOfValue, line, raw));
        if (_knownNames.Add(name))
            _names.Add(name);
        if (unitColumn >= 0)
            TakeUnit(name, CellText.Trim(block.Cell(row, unitColumn)).ToString(), line);
    }

    private void TakeUnit(string name, string unit, int line)
    {
        if (unit.Length == 0)
            return;
        if (_unitOf.TryAdd(name, unit) || _unitOf[name] == unit || _problems.Count > 0)
            return;
        _problems.Add(MappingMessages.UnitsVary(_shape, name, _unitOf[name], unit, line));
    }

    /// <summary>Readings that nobody mapped are no data, and say so.</summary>
    private void SetUnmappedAside()
    {
        var byName = HeadingRow.From(_names, null);
        var mapped = _mapping.Values.Values.Where(field => field.Column is not null).Select(field => byName.Find(field.Column!)).OfType<Heading>()
            .Select(heading => _names[heading.Position]).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var ignored = _mapping.Ignore.ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var record in _records)
        {
            foreach (var name in record.Readings.Keys.Where(name => !mapped.Contains(name)).ToArray())
            {
                Count(ignored.Contains(name) ? "ignored reading" : "unmapped reading");
                record.Readings.Remove(name);
            }
        }

        _records.RemoveAll(record => record.Readings.Count == 0);
    }

    private void Count(string label) => _notData[label] = _notData.GetValueOrDefault(label) + 1;

    private static LongCell CellOf(RawBlock block, int row, int column) =>
        new(CellText.Trim(block.Cell(row, column)).ToString(), block.Kind(row, column), block.Number(row, column));
}
