using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>A continuous recording: keeps as many samples as a recording has before its trigger, and cuts.</summary>
internal sealed class StreamDivision : IRunDivision
{
    private readonly string _file;
    private readonly StreamCut _cut;
    private readonly int _columns;
    private readonly bool _hasClock;
    private readonly SampleRows _rows;
    private readonly double _rateHz;
    private readonly RunHeads _heads;
    private readonly Queue<Sample> _before = new();
    private SampleRun? _run;
    private double _triggeredAt;
    private double _firstClock = double.NaN;
    private bool _isBelow;
    private long _samples;
    private bool _hasTriggered;

    public StreamDivision(string file, StreamCut cut, SampleColumn[] columns, SampleColumn? clock, double rateHz, RunHeads heads, SampleColumns binder, List<MappedReject> rejects)
    {
        (_file, _cut, _columns, _hasClock, _rateHz, _heads) = (file, cut, columns.Length, clock is not null, rateHz, heads);
        var trigger = binder.Number(new FieldSource { Column = cut.Column, Unit = "1" }, "the trigger", "1");
        _rows = new SampleRows(clock, trigger is null ? columns : [.. columns, trigger], rejects);
    }

    /// <inheritdoc/>
    public Problem? Problem { get; private set; }

    /// <inheritdoc/>
    public long Unused { get; private set; }

    /// <inheritdoc/>
    public bool IsShared => false;

    /// <inheritdoc/>
    public IEnumerable<SampleRun> Take(RawBlock block, int from, int upTo)
    {
        _rows.Read(block, from, upTo);
        for (var row = from; row < upTo && Problem is null; row++)
        {
            var sample = SampleAt(block, row, row - from);
            if (double.IsNaN(_firstClock))
                _firstClock = sample.Seconds;
            if (!double.IsFinite(sample.Seconds))
            {
                Problem = RecordingMessages.ClockUnreadable(_file, sample.Line);
                yield break;
            }

            if (_run is { } run && sample.Seconds > _triggeredAt + _cut.ToSeconds)
            {
                _run = null;
                yield return run;
            }

            Take(sample, _rows.Column(_columns)[row - from]);
        }
    }

    /// <inheritdoc/>
    public IEnumerable<SampleRun> End()
    {
        Unused += _before.Count;
        _before.Clear();
        if (!_hasTriggered)
            Problem ??= RecordingMessages.NoTriggers(_file, _cut.Column, _cut.Level);
        return _run is { } run ? [run] : [];
    }

    private Sample SampleAt(RawBlock block, int row, int place)
    {
        var values = new double[_columns];
        for (var i = 0; i < values.Length; i++)
            values[i] = _rows.Column(i)[place];
        var seconds = _hasClock ? _rows.Clock[place] : _samples / _rateHz;
        _samples++;
        return new Sample(values, _rows.Clock[place], seconds, _rows.Lines[place], _heads.At(block, row));
    }

    private void Take(Sample sample, double level)
    {
        var rises = _isBelow && level >= _cut.Level;
        _isBelow = double.IsNaN(level) ? _isBelow : level < _cut.Level;
        if (_run is not null)
            Add(_run, sample);
        else if (rises)
            Cut(sample);
        else
            Keep(sample);
    }

    private void Keep(Sample sample)
    {
        _before.Enqueue(sample);
        while (_before.Peek().Seconds < sample.Seconds + _cut.FromSeconds)
        {
            _before.Dequeue();
            Unused++;
        }

        if ((long)_before.Count * _columns > ReaderLimits.RecordingValues)
            Problem = RecordingMessages.TooLong(_file, sample.Line, ReaderLimits.RecordingValues);
    }

    private void Cut(Sample trigger)
    {
        Keep(trigger);
        var first = _before.Peek();
        _hasTriggered = true;
        _triggeredAt = trigger.Seconds;
        _run = new SampleRun(_columns, first.Texts, trigger.Line)
        {
            StartOffsetMillis = _heads.HasOwnTimes ? 0 : (long)Math.Round((first.Seconds - _firstClock) * 1000),
            CutContactSeconds = trigger.Seconds - first.Seconds,
        };
        while (_before.TryDequeue(out var sample))
            Add(_run, sample);
    }

    private void Add(SampleRun run, Sample sample)
    {
        run.Add(sample.Values, sample.Clock, sample.Line);
        if (run.ValueCount > ReaderLimits.RecordingValues)
            Problem = RecordingMessages.TooLong(_file, run.Row, ReaderLimits.RecordingValues);
    }

    private sealed record Sample(double[] Values, double Clock, double Seconds, int Line, RecordingTexts Texts);
}
