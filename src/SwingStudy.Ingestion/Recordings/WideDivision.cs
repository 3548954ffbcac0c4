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
    private readonly double[][] _samples = [.. trials.Select(trial => new double[trial.Columns.Length])];
    private SampleRun[]? _runs;

    /// <inheritdoc/>
    public Problem? Problem { get; private set; }

    /// <inheritdoc/>
    public long Unused => 0;

    /// <inheritdoc/>
    public bool IsShared => true;

    /// <inheritdoc/>
    public SampleRun[] Take(RawBlock block, int row)
    {
        var cells = block.Cells(row);
        var seconds = clock?.Read(cells, rejects) ?? double.NaN;
        _runs ??= [.. trials.Select(trial => Start(block, row, trial.Trial, trial.Columns))];
        long values = 0;
        for (var i = 0; i < _runs.Length; i++)
        {
            var columns = trials[i].Columns;
            for (var column = 0; column < columns.Length; column++)
                _samples[i][column] = columns[column].Read(cells, rejects);
            _runs[i].Add(_samples[i], seconds, block.Line(row));
            values += _runs[i].ValueCount;
        }

        if (values > ReaderLimits.RecordingValues)
            Problem = RecordingMessages.TooLong(file, block.Line(row), ReaderLimits.RecordingValues);
        return [];
    }

    /// <inheritdoc/>
    public SampleRun[] End()
    {
        foreach (var run in _runs ?? [])
            run.TrimEnd();
        return [.. (_runs ?? []).Where(run => run.Lines.Count > 0)];
    }

    private SampleRun Start(RawBlock block, int row, string trial, SampleColumn[] columns) =>
        new(columns.Length, heads.At(block, row) with { Sequence = trial }, columns.Min(column => column.Position) + 1);
}
