using NodaTime;
using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Long;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Puts the blocks of one file together: what needs all rows in order is decided here.</summary>
internal sealed class FileAssembly
{
    private const int FewestUnreadable = 3;
    private const int MostRestartRemarks = 5;
    private readonly MappingPlan _plan;
    private readonly SheetShape _shape;
    private readonly IReadOnlyList<MappedBlock> _blocks;
    private readonly LongPivot? _pivot;
    private readonly List<MappedReject> _rejects = [];
    private readonly List<Problem> _remarks = [];
    private readonly SortedDictionary<string, long> _notData = new(StringComparer.Ordinal);
    private readonly int[] _blockOf;
    private readonly int[] _rowOf;
    private readonly int[] _lines;
    private readonly long[] _millis;
    private readonly long[] _sequence;
    private long _rejectedRows;
    private readonly List<int> _dropped = [];

    public FileAssembly(MappingPlan plan, SheetShape shape, IReadOnlyList<MappedBlock> blocks, IReadOnlyList<RejectedRecord> broken, LongPivot? pivot = null)
    {
        _plan = plan;
        _shape = shape;
        _blocks = blocks;
        _pivot = pivot;
        _remarks.AddRange(plan.Remarks);
        var count = blocks.Sum(block => block.Kept.Length);
        (_blockOf, _rowOf, _lines) = (new int[count], new int[count], new int[count]);
        (_millis, _sequence) = (new long[count], new long[count]);
        var at = 0;
        for (var b = 0; b < blocks.Count; b++)
        {
            var block = blocks[b];
            foreach (var row in block.Kept)
            {
                _blockOf[at] = b;
                _rowOf[at] = row;
                _lines[at] = block.Lines[row];
                _millis[at] = block.Millis[row];
                _sequence[at] = block.Sequence[row];
                at++;
            }

            _rejects.AddRange(block.Rejects);
            _rejectedRows += block.RejectedRows;
            foreach (var (label, rows) in block.NotData)
                CountNotData(label, rows);
        }

        foreach (var record in broken)
            TakeBroken(record);
    }

    /// <summary>Why the file is held.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>Turns local times into UTC, with what the order of rows tells about midnight and summer time.</summary>
    public void SettleTimes(DateTimeZone? zone, AmbiguousChoice? choice)
    {
        if (_plan.Time.HasFixedDay && AreOneDay())
        {
            foreach (var row in MidnightCrossing.Carry(_millis))
                _remarks.Add(MappingMessages.MidnightCrossed(_shape, LineOf(row)));
        }

        if (_plan.Time.Format!.MayCarryOffset)
            SettleMixed(zone, choice);
        else if (_plan.Time.Format.NeedsZone)
            Note(new ZoneClock(zone!).Resolve(_millis, _sequence, choice), row => row);
        DropFarOff();
        NoteRestarts();
    }

    /// <summary>A column of which not one cell can be read is a mistake of the mapping, not of the cells.</summary>
    public void CheckColumns()
    {
        var unreadable = _rejects.Where(reject => reject.Variable is not null).GroupBy(reject => reject.Variable!).ToDictionary(group => group.Key, group => group.ToList());
        for (var i = 0; i < _plan.Numbers.Count; i++)
            CheckColumn(_plan.Numbers[i], _blocks.Any(block => Array.Exists(block.Kept, row => !double.IsNaN(block.Numbers[i][row]))), unreadable);
        for (var i = 0; i < _plan.Texts.Count; i++)
            CheckColumn(_plan.Texts[i], _blocks.Any(block => Array.Exists(block.Kept, row => block.Texts[i][row] is not null)), unreadable);
    }

    /// <summary>The finished file. Call once, after the checks.</summary>
    public MappedFile ToFile(RecordDocument document)
    {
        var kept = Kept();
        var aliases = new List<string>();
        var aliasOf = Aliases(kept, aliases);
        IReadOnlyList<MappedReject> rejects = [.. _rejects.OrderBy(reject => reject.Line)];
        if (_pivot is not null)
        {
            var columns = _plan.Mapping.Values.Where(pair => pair.Value.Column is not null).ToDictionary(pair => pair.Key, pair => ColumnOf(pair.Key), StringComparer.Ordinal);
            (rejects, _rejectedRows) = _pivot.Translate(rejects, columns);
            rejects = [.. rejects.OrderBy(reject => reject.Line)];
        }

        var counts = Counts(document.Counts, kept.Length);
        return new MappedFile
        {
            Plan = _plan,
            // What was put together above is not kept twice: files of millions of rows are held in memory until they are written.
            Blocks = [.. _blocks.Select(block => block with { Lines = [], Millis = [], Sequence = [], Aliases = [], IsUtc = null, Kept = [], Rejects = [] })],
            BlockOf = Pick(_blockOf, kept),
            RowOf = Pick(_rowOf, kept),
            Lines = _pivot is null ? Pick(_lines, kept) : [.. Pick(_lines, kept).Select(_pivot.LineOf)],
            RecordedAt = Pick(_millis, kept),
            Sequence = Pick(_sequence, kept),
            AliasOf = aliasOf,
            Aliases = aliases,
            Rejects = rejects,
            Counts = counts,
            LinesPerRow = _pivot?.LinesPerRow([.. Pick(_lines, kept)], _rejects),
            Remarks = [.. document.Notices, .. _remarks],
        };
    }

    private void TakeBroken(RejectedRecord record)
    {
        if (_plan.NotData.Label(record.Cells) is { } label)
        {
            CountNotData(label, 1);
            return;
        }

        _rejects.Add(new MappedReject(record.Line, record.Raw, record.Problem.Code, record.Problem.Expected, true, record.Problem.Place.Column, null));
        _rejectedRows++;
    }

    private void CountNotData(string label, long rows)
    {
        if (rows > 0)
            _notData[label] = _notData.GetValueOrDefault(label) + rows;
    }

    private bool AreOneDay()
    {
        const long day = 86_400_000;
        return _millis.Length > 0 && Array.TrueForAll(_millis, millis => Math.Floor((double)millis / day) == Math.Floor((double)_millis[0] / day));
    }

    /// <summary>ISO texts with an offset are UTC already; those without are local.</summary>
    private void SettleMixed(DateTimeZone? zone, AmbiguousChoice? choice)
    {
        var local = new List<int>();
        for (var i = 0; i < _millis.Length; i++)
        {
            if (!_blocks[_blockOf[i]].IsUtc![_rowOf[i]])
                local.Add(i);
        }

        if (local.Count == 0)
            return;
        if (zone is null)
        {
            foreach (var row in local)
                Drop(row, RejectReason.TimeWithoutZone, "a time with Z or an offset, or a zone in the mapping");
            return;
        }

        var millis = local.Select(row => _millis[row]).ToArray();
        var sequence = local.Select(row => _sequence[row]).ToArray();
        var resolved = new ZoneClock(zone).Resolve(millis, sequence, choice);
        for (var i = 0; i < millis.Length; i++)
            _millis[local[i]] = millis[i];
        Note(resolved, position => local[position]);
    }

    private void Note(ResolvedTimes resolved, Func<int, int> rowOf)
    {
        foreach (var position in resolved.Skipped)
            Drop(rowOf(position), RejectReason.TimeSkipped, "a local time that existed: clocks went forward over it");
        foreach (var run in resolved.Ambiguous)
        {
            var (first, last) = (LineOf(rowOf(run.First)), LineOf(rowOf(run.Last)));
            switch (run.Decision)
            {
                case AmbiguousDecision.Open:
                    Problems.Add(MappingMessages.TimeRepeated(_shape, first, last));
                    break;
                case AmbiguousDecision.ByOrder:
                    _remarks.Add(MappingMessages.TimeRepeatedDecided(_shape, first, LineOf(rowOf(run.FirstLater!.Value)), "the order of the rows"));
                    break;
                default:
                    _remarks.Add(MappingMessages.TimeRepeatedDecided(_shape, first, null, "a person"));
                    break;
            }
        }
    }

    private void Drop(int row, string reason, string expected)
    {
        _dropped.Add(row);
        _rejectedRows++;
        var text = DateTimeOffset.FromUnixTimeMilliseconds(_millis[row]).UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss.fff", System.Globalization.CultureInfo.InvariantCulture);
        _rejects.RemoveAll(reject => reject.Line == _lines[row] && !reject.IsRow);
        _rejects.Add(new MappedReject(_lines[row], text, reason, expected, true, _plan.Time.Name, null));
    }

    /// <summary>A year that nobody meant: a time ten years from the middle of all times of the file is a slip of the keyboard.</summary>
    private void DropFarOff()
    {
        const long tenYears = 3_652L * 86_400_000;
        if (_millis.Length < FewestUnreadable || _millis.Max() - _millis.Min() < tenYears)
            return;
        var middle = _millis.Order().ElementAt(_millis.Length / 2);
        var dropped = _dropped.ToHashSet();
        for (var row = 0; row < _millis.Length; row++)
        {
            if (Math.Abs(_millis[row] - middle) > tenYears && !dropped.Contains(row))
                Drop(row, RejectReason.TimeFarOff, "a time within ten years of the others in the file");
        }
    }

    private void NoteRestarts()
    {
        var latest = new Dictionary<string, long>(StringComparer.Ordinal);
        var remarks = 0;
        for (var i = 0; i < _sequence.Length && remarks < MostRestartRemarks; i++)
        {
            if (_sequence[i] == long.MinValue)
                continue;
            var alias = _blocks[_blockOf[i]].Aliases[_rowOf[i]]!;
            if (latest.TryGetValue(alias, out var before) && _sequence[i] < before)
            {
                _remarks.Add(MappingMessages.SequenceRestarted(_shape, LineOf(i), before, _sequence[i]));
                remarks++;
            }

            latest[alias] = _sequence[i];
        }
    }

    private void CheckColumn(ValueColumn column, bool hasValues, Dictionary<string, List<MappedReject>> unreadable)
    {
        if (!hasValues && unreadable.TryGetValue(column.Variable.Name, out var rejects) && rejects.Count >= FewestUnreadable)
        {
            Problems.Add(rejects.TrueForAll(reject => reject.Reason == RejectReason.OutOfRange)
                ? MappingMessages.ColumnImpossible(_shape, column.Place.Name, column.Variable, rejects.Count, rejects[0].Raw, rejects[0].Expected)
                : MappingMessages.ColumnUnreadable(_shape, column.Place.Name, column.Variable, rejects.Count, rejects[0].Raw));
        }
    }

    private int[] Kept()
    {
        if (_dropped.Count == 0)
            return [.. Enumerable.Range(0, _lines.Length)];
        var dropped = _dropped.ToHashSet();
        return [.. Enumerable.Range(0, _lines.Length).Where(row => !dropped.Contains(row))];
    }

    private int[] Aliases(int[] kept, List<string> aliases)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var aliasOf = new int[kept.Length];
        string? latest = null;
        var latestId = 0;
        for (var i = 0; i < kept.Length; i++)
        {
            var alias = _blocks[_blockOf[kept[i]]].Aliases[_rowOf[kept[i]]]!;
            if (!ReferenceEquals(alias, latest))
            {
                if (!known.TryGetValue(alias, out latestId))
                {
                    latestId = aliases.Count;
                    known.Add(alias, latestId);
                    aliases.Add(alias);
                }

                latest = alias;
            }

            aliasOf[i] = latestId;
        }

        return aliasOf;
    }

    private LineCounts Counts(RecordCounts records, int taken)
    {
        CountNotData("preamble", records.Preamble);
        CountNotData("heading", records.Headings + records.Repeated);
        CountNotData("units", records.Units);
        CountNotData("blank", records.Blank);
        if (_pivot is not null)
        {
            foreach (var (label, lines) in _pivot.NotData)
                CountNotData(label, lines);
        }

        // A record of the long form takes as many lines as it has readings that are not rejected one by one.
        var rows = _pivot is null ? taken : records.Records - _rejectedRows - _notData.Values.Sum();
        return new LineCounts(records.Records, rows, _rejectedRows, _notData);
    }

    private string ColumnOf(string variable) =>
        _plan.Numbers.Cast<ValueColumn>().Concat(_plan.Texts).First(column => column.Variable.Name == variable).Place.Name;

    private int LineOf(int row) => _pivot?.LineOf(_lines[row]) ?? _lines[row];

    private static T[] Pick<T>(T[] values, int[] rows)
    {
        if (rows.Length == values.Length)
            return values;
        var picked = new T[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            picked[i] = values[rows[i]];
        return picked;
    }
}
