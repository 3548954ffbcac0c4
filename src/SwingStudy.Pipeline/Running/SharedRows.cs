using System.Collections.Concurrent;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>Rows of files that stages see whole: read once for all stages of a run, with the columns that any of them reads, and ahead of their turn.</summary>
/// <remarks>A file never changes under its name, so that what was read once holds for the whole run. Curves and other long rows are not among it: one stage reads
/// them, for one player or day at a time, and what it read is let go.</remarks>
internal sealed class SharedRows
{
    private readonly TableStore _tables;
    private readonly Dictionary<string, IReadOnlyList<BoundInput>> _askedFor = new(StringComparer.Ordinal);
    private readonly Dictionary<string, BoundInput> _unions = new(StringComparer.Ordinal);
    private readonly HashSet<string> _written;
    private readonly ConcurrentDictionary<(string Table, string Path), Lazy<RowSet>> _rows = new();
    private readonly Lock _oneAtATime = new();
    private Task _ahead = Task.CompletedTask;
    private bool _hasBegun;

    /// <param name="stages">The stages of the run.</param>
    /// <param name="tables">Where their tables lie.</param>
    public SharedRows(IReadOnlyList<BoundStage> stages, TableStore tables)
    {
        _tables = tables;
        _written = stages.SelectMany(stage => stage.Outputs.Keys).ToHashSet(StringComparer.Ordinal);
        foreach (var table in stages.SelectMany(stage => stage.Inputs).Where(IsWhole).GroupBy(input => input.Table.Name, StringComparer.Ordinal))
        {
            if (table.Any(IsOfStudy) || table.Count() > 1)
                (_askedFor[table.Key], _unions[table.Key]) = ([.. table], Union([.. table]));
        }
    }

    /// <summary>Rows of a file of an input table, with the columns that the input asks for.</summary>
    public RowSet Read(BoundInput input, DataFile file)
    {
        if (!IsWhole(input) || !_unions.TryGetValue(input.Table.Name, out var union))
            return ReadFile(input, file);
        var rows = Shared(union, file).Value;
        return new RowSet(input.Shape, [.. input.Shape.Columns.Select(column => rows[column.Name])]);
    }

    /// <summary>Begins to read, on a thread of its own, files that stay as they are while a stage works: those of its outputs that it need not write anew, and at the first
    /// such stage those that no stage writes. What cannot be read is told by the stage that asks for it.</summary>
    /// <returns>Ends when they are read.</returns>
    public Task ReadAhead(IEnumerable<(string Table, DataFile File)> kept)
    {
        lock (_oneAtATime)
        {
            var first = _hasBegun ? [] : _unions.Keys.Where(table => !_written.Contains(table)).SelectMany(table => _tables.Table(_unions[table].Table).Files().Select(file => (table, file)));
            List<(string Table, DataFile File)> files = [.. first.Concat(kept).Where(IsAskedFor)];
            _hasBegun = true;
            return _ahead = _ahead.ContinueWith(_ => ReadAll(files), CancellationToken.None, TaskContinuationOptions.LongRunning, TaskScheduler.Default);
        }
    }

    private void ReadAll(List<(string Table, DataFile File)> files)
    {
        foreach (var (table, file) in files)
            _ = Shared(_unions[table], file).Value;
    }

    private bool IsAskedFor((string Table, DataFile File) file) =>
        _askedFor.TryGetValue(file.Table, out var inputs) && inputs.Any(input => input.Slice != Slice.WithValues || FileValues.MayHold(file.File, input.Shape));

    private Lazy<RowSet> Shared(BoundInput union, DataFile file) => _rows.GetOrAdd((union.Table.Name, file.Path), _ => new Lazy<RowSet>(() => ReadFile(union, file)));

    private RowSet ReadFile(BoundInput input, DataFile file) => JoinedRows.Of(input.Shape, [.. _tables.Table(input.Table).ReadFiles([file], input.Columns)]);

    private static bool IsWhole(BoundInput input) => IsOfStudy(input) || input.Slice == Slice.SameParticipant;

    private static bool IsOfStudy(BoundInput input) => input.Slice is Slice.WholeTable or Slice.WithValues;

    private static BoundInput Union(IReadOnlyList<BoundInput> inputs)
    {
        var columns = inputs.SelectMany(input => input.Shape.Columns).Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        return new BoundInput(inputs[0].Table, Slice.WholeTable, [.. inputs[0].Table.Columns.Select(column => column.Name).Where(columns.Contains)]);
    }
}
