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
    private readonly SampleColumn[] _columns;
    private readonly SampleColumn? _clock;
    private readonly SampleColumn? _trigger;
    private readonly double _rateHz;
    private readonly RunHeads _heads;
    private readonly List<MappedReject> _rejects;
    private readonly Queue<Sample> _before = new();
    private SampleRun? _run;
    private double _triggeredAt;
    private double _firstClock = double.NaN;
    private bool _isBelow;
    private long _samples;
    private bool _hasTriggered;

    public StreamDivision(string file, StreamCut cut, SampleColumn[] columns, SampleColumn? clock, double rateHz, RunHeads heads, SampleColumns binder, List<MappedReject> rejects)
    {
        (_file, _cut, _columns, _clock, _rateHz, _heads, _rejects) = (file, cut, columns, clock, rateHz, heads, rejects);
        _trigger = binder.Number(new FieldSource { Column = cut.Column, Unit = "1" }, "the trigger", "1");
    }

    /// <inheritdoc/>
    public Problem? Problem { get; private set; }

    /// <inheritdoc/>
    public long Unused { get; private set; }

    /// <inheritdoc/>
    public bool IsShared => false;

    /// <inheritdoc/>
    public SampleRun[] Take(RawBlock block, int row)
    {
        var cells = block.Cells(row);
        var values = new double[_columns.Length];
        for (var i = 0; i < values.Length; i++)
            values[i] = _columns[i].Read(cells, _rejects);
        var clock = _clock?.Read(cells, _rejects) ?? double.NaN;
        var seconds = _clock is null ? _samples / _rateHz : clock;
        _samples++;
        if (double.IsNaN(_firstClock))
            _firstClock = seconds;
        var sample = new Sample(values, clock, seconds, block.Line(row), _heads.At(block, row));
        if (!double.IsFinite(seconds))
        {
            Problem = RecordingMessages.ClockUnreadable(_file, sample.Line);
            return [];
        }

        SampleRun[] finished = [];
        if (_run is not null && seconds > _triggeredAt + _cut.ToSeconds)
            finished = End();
        var level = _trigger!.Read(cells, _rejects);
        var rises = _isBelow && level >= _cut.Level;
        _isBelow = double.IsNaN(level) ? _isBelow : level < _cut.Level;
        if (_run is not null)
            Add(_run, sample);
        else if (rises)
            Cut(sample);
        else
            Keep(sample);
        return finished;
    }

    /// <inheritdoc/>
    public SampleRun[] End()
    {
        Unused += _before.Count;
        _before.Clear();
        if (_run is { } run)
        {
            _run = null;
            return [run];
        }

        if (!_hasTriggered)
            Problem ??= RecordingMessages.NoTriggers(_file, _cut.Column, _cut.Level);
        return [];
    }

    private void Keep(Sample sample)
    {
        _before.Enqueue(sample);
        while (_before.Peek().Seconds < sample.Seconds + _cut.FromSeconds)
        {
            _before.Dequeue();
            Unused++;
        }

        if ((long)_before.Count * _columns.Length > ReaderLimits.RecordingValues)
            Problem = RecordingMessages.TooLong(_file, sample.Line, ReaderLimits.RecordingValues);
    }

    private void Cut(Sample trigger)
    {
        Keep(trigger);
        var first = _before.Peek();
        _hasTriggered = true;
        _triggeredAt = trigger.Seconds;
        _run = new SampleRun(_columns.Length, first.Texts, trigger.Line)
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
