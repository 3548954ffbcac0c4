using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Many recordings side by side, each with columns of its own.</summary>
/// <param name="file">For messages.</param>
/// <param name="trials">Number and columns of each recording.</param>
/// <param name="clock">Column of times that all share.</param>
/// <param name="heads">What is written of the file.</param>
/// <param name="rejects">Takes cells that cannot be read.</param>
internal sealed class WideDivision(
    string file, IReadOnlyList<(string Trial, SampleColumn[] Columns)> trials, SampleColumn? clock, RunHeads heads, List<MappedReject> rejects) : IRunDivision
{
    private readonly SampleRows _rows = new(clock, [.. trials.SelectMany(trial => trial.Columns)], rejects);
    private SampleRun[]? _runs;

    /// <inheritdoc/>
    public Problem? Problem { get; private set; }

    /// <inheritdoc/>
    public long Unused => 0;

    /// <inheritdoc/>
    public bool IsShared => true;

    /// <inheritdoc/>
    public IEnumerable<SampleRun> Take(RawBlock block, int from, int upTo)
    {
        _rows.Read(block, from, upTo);
        _runs ??= [.. trials.Select(trial => Start(block, from, trial.Trial, trial.Columns))];
        var firstColumn = 0;
        for (var i = 0; i < _runs.Length; i++)
        {
            _runs[i].Add(_rows, 0, _rows.Count, firstColumn);
            firstColumn += trials[i].Columns.Length;
        }

        if (_runs.Sum(run => run.ValueCount) > ReaderLimits.RecordingValues)
            Problem = RecordingMessages.TooLong(file, block.Line(upTo - 1), ReaderLimits.RecordingValues);
        return [];
    }

    /// <inheritdoc/>
    public IEnumerable<SampleRun> End()
    {
        foreach (var run in _runs ?? [])
            run.TrimEnd();
        return (_runs ?? []).Where(run => run.Count > 0);
    }

    private SampleRun Start(RawBlock block, int row, string trial, SampleColumn[] columns) =>
        new(columns.Length, heads.At(block, row) with { Sequence = trial }, columns.Min(column => column.Position) + 1);
}
