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
    private readonly MappedBlock[] _blocks;
    private readonly LongPivot? _pivot;
    private readonly List<MappedReject> _rejects = [];
    private readonly List<Problem> _remarks = [];
    private readonly SortedDictionary<string, long> _notData = new(StringComparer.Ordinal);
    private readonly int[] _starts;
    private readonly int[] _lines;
    private readonly long[] _millis;
    private readonly int[] _aliasOf;
    private readonly List<string> _aliases = [];
    private readonly bool[]? _isUtc;
    private long _rejectedRows;
    private readonly List<int> _dropped = [];

    /// <summary>Puts blocks together.</summary>
    /// <param name="plan">The mapping, bound to the file.</param>
    /// <param name="shape">The file.</param>
    /// <param name="blocks">The blocks in file order. They are taken over: what is put together is not kept twice.</param>
    /// <param name="broken">Records that could not be divided into cells.</param>
    /// <param name="pivot">Where the rows come from in the long form.</param>
    public FileAssembly(MappingPlan plan, SheetShape shape, MappedBlock[] blocks, IReadOnlyList<RejectedRecord> broken, LongPivot? pivot = null)
    {
        _plan = plan;
        _shape = shape;
        _blocks = blocks;
        _pivot = pivot;
        _remarks.AddRange(plan.Remarks);
        var count = blocks.Sum(block => block.Lines.Length);
        (_starts, _lines, _millis, _aliasOf) = (new int[blocks.Length], new int[count], new long[count], new int[count]);
        _isUtc = blocks.Any(block => block.IsUtc is not null) ? new bool[count] : null;
        _rejects.Capacity = blocks.Sum(block => block.Rejects.Count);
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int b = 0, at = 0; b < blocks.Length; at += blocks[b].Count, b++)
        {
            _starts[b] = at;
            Take(blocks[b], at, known);
            blocks[b] = blocks[b] with { Lines = [], Millis = [], IsUtc = null, Rejects = [] };
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
            Note(new ZoneClock(zone!).Resolve(_millis, Sequence(), choice), row => row);
        DropFarOff();
        NoteRestarts();
    }

    /// <summary>A column of which not one cell can be read is a mistake of the mapping, not of the cells.</summary>
    public void CheckColumns()
    {
        for (var i = 0; i < _plan.Numbers.Count; i++)
            CheckColumn(_plan.Numbers[i], Array.Exists(_blocks, block => block.Numbers[i].HasAny));
        for (var i = 0; i < _plan.Texts.Count; i++)
            CheckColumn(_plan.Texts[i], Array.Exists(_blocks, block => block.Texts[i].HasAny));
    }

    /// <summary>The finished file. Call once, after the checks.</summary>
    public MappedFile ToFile(RecordDocument document)
    {
        var kept = Kept();
        var (aliasOf, aliases) = Aliases(kept);
        var rejects = InOrder(_rejects);
        if (_pivot is not null)
        {
            var columns = _plan.Mapping.Values.Where(pair => pair.Value.Column is not null).ToDictionary(pair => pair.Key, pair => ColumnOf(pair.Key), StringComparer.Ordinal);
            (rejects, _rejectedRows) = _pivot.Translate(rejects, columns);
            rejects = InOrder(rejects);
        }

        var counts = Counts(document.Counts, kept?.Length ?? _lines.Length);
        return new MappedFile
        {
            Plan = _plan,
            Blocks = _blocks,
            Starts = _starts,
            Places = kept,
            Lines = _pivot is null ? Pick(_lines, kept) : [.. Pick(_lines, kept).Select(_pivot.LineOf)],
            RecordedAt = Pick(_millis, kept),
            AliasOf = aliasOf,
            Aliases = aliases,
            Rejects = rejects,
            Counts = counts,
            LinesPerRow = _pivot?.LinesPerRow([.. Pick(_lines, kept)], _rejects),
            Remarks = [.. document.Notices, .. _remarks],
        };
    }

    private void Take(MappedBlock block, int at, Dictionary<string, int> known)
    {
        block.Lines.CopyTo(_lines, at);
        block.Millis.CopyTo(_millis, at);
        block.IsUtc?.CopyTo(_isUtc!, at);
        var (latest, latestId) = ((string?)null, 0);
        for (var row = 0; row < block.Count; row++)
        {
            var alias = block.Aliases[row]!;
            if (!ReferenceEquals(alias, latest))
            {
                if (!known.TryGetValue(alias, out latestId))
                {
                    known.Add(alias, latestId = _aliases.Count);
                    _aliases.Add(alias);
                }

                latest = alias;
            }

            _aliasOf[at + row] = latestId;
        }

        _rejects.AddRange(block.Rejects);
        _rejectedRows += block.RejectedRows;
        foreach (var (label, rows) in block.NotData)
            CountNotData(label, rows);
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
            if (!_isUtc![i])
                local.Add(i);
        }

        if (local.Count == 0)
            return;
        if (zone is null && local.Count == _millis.Length)
        {
            Problems.Add(MappingMessages.ZoneUnstated(_plan.Mapping, _shape));
            return;
        }

        if (zone is null)
        {
            foreach (var row in local)
                Drop(row, RejectReason.TimeWithoutZone, "a time with Z or an offset, or a zone in the mapping");
            return;
        }

        var millis = local.Select(row => _millis[row]).ToArray();
        var all = Sequence();
        var sequence = local.Select(row => all[row]).ToArray();
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
        var latest = new double[_aliases.Count];
        Array.Fill(latest, double.NaN);
        var remarks = 0;
        for (var b = 0; b < _blocks.Length; b++)
        {
            var sequence = _blocks[b].Sequence;
            for (var row = 0; row < _blocks[b].Count && sequence.HasAny && remarks < MostRestartRemarks; row++)
            {
                var number = sequence[row];
                if (double.IsNaN(number))
                    continue;
                ref var before = ref latest[_aliasOf[_starts[b] + row]];
                if (number < before)
                {
                    _remarks.Add(MappingMessages.SequenceRestarted(_shape, LineOf(_starts[b] + row), (long)before, (long)number));
                    remarks++;
                }

                before = number;
            }
        }
    }

    private void CheckColumn(ValueColumn column, bool hasValues)
    {
        if (hasValues)
            return;
        var rejects = _rejects.FindAll(reject => reject.Variable == column.Variable.Name);
        if (rejects.Count < FewestUnreadable)
            return;
        Problems.Add(rejects.TrueForAll(reject => reject.Reason == RejectReason.OutOfRange)
            ? MappingMessages.ColumnImpossible(_shape, column.Place.Name, column.Variable, rejects.Count, rejects[0].Raw, rejects[0].Expected)
            : MappingMessages.ColumnUnreadable(_shape, column.Place.Name, column.Variable, rejects.Count, rejects[0].Raw));
    }

    /// <summary>Places of the rows that are left; null when all are.</summary>
    private int[]? Kept()
    {
        if (_dropped.Count == 0)
            return null;
        var dropped = _dropped.ToHashSet();
        return [.. Enumerable.Range(0, _lines.Length).Where(row => !dropped.Contains(row))];
    }

    /// <summary>The players of the rows that are left, numbered by their first row.</summary>
    private (int[] AliasOf, IReadOnlyList<string> Aliases) Aliases(int[]? kept)
    {
        if (kept is null)
            return (_aliasOf, _aliases);
        var renumbered = new Dictionary<int, int>();
        var aliasOf = new int[kept.Length];
        for (var i = 0; i < kept.Length; i++)
        {
            if (!renumbered.TryGetValue(_aliasOf[kept[i]], out aliasOf[i]))
                renumbered.Add(_aliasOf[kept[i]], aliasOf[i] = renumbered.Count);
        }

        return (aliasOf, [.. renumbered.OrderBy(pair => pair.Value).Select(pair => _aliases[pair.Key])]);
    }

    /// <summary>The device's numbers of all rows; <see cref="long.MinValue"/> where it gives none.</summary>
    private long[] Sequence() =>
        [.. _blocks.SelectMany(block => Enumerable.Range(0, block.Count).Select(row => block.Sequence[row] is var number && double.IsNaN(number) ? long.MinValue : (long)number))];

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

    private static IReadOnlyList<MappedReject> InOrder(IReadOnlyList<MappedReject> rejects)
    {
        for (var i = 1; i < rejects.Count; i++)
        {
            if (rejects[i].Line < rejects[i - 1].Line)
                return [.. rejects.OrderBy(reject => reject.Line)];
        }

        return rejects;
    }

    private static T[] Pick<T>(T[] values, int[]? rows) => rows is null ? values : Array.ConvertAll(rows, row => values[row]);
}
