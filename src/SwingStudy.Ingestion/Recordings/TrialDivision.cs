using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>One recording, or many below each other that a column numbers.</summary>
/// <param name="file">For messages.</param>
/// <param name="trialColumn">Position of the column that numbers recordings; -1 where a file is one.</param>
/// <param name="columns">Columns of samples.</param>
/// <param name="clock">Column of times.</param>
/// <param name="heads">What is written at the first row.</param>
/// <param name="rejects">Takes cells that cannot be read.</param>
internal sealed class TrialDivision(string file, int trialColumn, SampleColumn[] columns, SampleColumn? clock, RunHeads heads, List<MappedReject> rejects) : IRunDivision
{
    private readonly HashSet<string> _seen = new(StringComparer.OrdinalIgnoreCase);
    private readonly SampleRows _rows = new(clock, columns, rejects);
    private SampleRun? _run;
    private string _trial = "";
    private double _firstClock = double.NaN;

    /// <inheritdoc/>
    public Problem? Problem { get; private set; }

    /// <inheritdoc/>
    public long Unused => 0;

    /// <inheritdoc/>
    public bool IsShared => false;

    /// <inheritdoc/>
    public IEnumerable<SampleRun> Take(RawBlock block, int from, int upTo)
    {
        _rows.Read(block, from, upTo);
        var row = from;
        while (row < upTo && Problem is null)
        {
            if (_run is null || !Belongs(block, row))
            {
                if (_run is not null)
                    yield return _run;
                Start(block, row, _rows.Clock[row - from]);
            }

            var end = row + 1;
            while (end < upTo && Belongs(block, end))
                end++;
            _run!.Add(_rows, row - from, end - row);
            if (_run.ValueCount > ReaderLimits.RecordingValues)
                Problem = RecordingMessages.TooLong(file, _run.Row, ReaderLimits.RecordingValues);
            row = end;
        }
    }

    /// <inheritdoc/>
    public IEnumerable<SampleRun> End() => _run is { } run ? [run] : [];

    private bool Belongs(RawBlock block, int row) =>
        trialColumn < 0 || CellText.Trim(block.Cell(row, trialColumn)).Equals(_trial, StringComparison.OrdinalIgnoreCase);

    private void Start(RawBlock block, int row, double seconds)
    {
        var line = block.Line(row);
        if (trialColumn >= 0)
        {
            _trial = CellText.Trim(block.Cell(row, trialColumn)).ToString();
            if (_trial.Length == 0)
                Problem = RecordingMessages.TrialMissing(file, line, "trial");
            else if (!_seen.Add(_trial))
                Problem = RecordingMessages.TrialReturns(file, line, _trial);
        }

        if (double.IsNaN(_firstClock))
            _firstClock = seconds;
        var texts = heads.At(block, row);
        var since = heads.HasOwnTimes || double.IsNaN(seconds) ? 0 : (long)Math.Round((seconds - _firstClock) * 1000);
        _run = new SampleRun(columns.Length, texts with { Sequence = texts.Sequence ?? (trialColumn >= 0 ? _trial : null) }, trialColumn >= 0 ? line : 1) { StartOffsetMillis = since };
    }
}
