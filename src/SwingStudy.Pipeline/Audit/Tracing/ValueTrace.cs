using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>Goes from a cell of any table back to the rows of originals it came from.</summary>
public sealed class ValueTrace
{
    private readonly TracedRows _rows;
    private readonly Lineage _lineage;
    private readonly OriginalRows _originals;

    /// <summary>Starts a trace.</summary>
    /// <param name="setup">The study's declarations.</param>
    /// <param name="registry">Its registry.</param>
    /// <param name="originals">Its originals.</param>
    public ValueTrace(StudySetup setup, StudyRegistry registry, OriginalStore originals)
    {
        _rows = new TracedRows(setup);
        _lineage = new Lineage(setup, _rows);
        _originals = new OriginalRows(setup, registry, originals);
        Tables = [.. TracedTable.All(setup.Dictionary).Select(table => (table.Definition.Name, string.Join('/', table.Keys)))];
    }

    /// <summary>The tables, and the columns whose values joined by '/' name a row of each.</summary>
    public IReadOnlyList<(string Table, string Key)> Tables { get; }

    /// <summary>Follows one cell, or a whole row.</summary>
    /// <param name="table">Name of the table.</param>
    /// <param name="key">Values of its key columns, joined by '/'.</param>
    /// <param name="column">The column; null for what the row is about.</param>
    /// <param name="depth">Steps back at the most. Null: one step for findings and what speaks of all players, else down to the originals.</param>
    /// <returns>The tree, raw text at its leaves; or why there is none.</returns>
    public Outcome<TraceNode> Of(string table, string key, string? column, int? depth = null)
    {
        if (Tables.All(known => known.Table != table))
            return new Problem("table-unknown", new Place("audit trace"), $"no table '{table}'", $"one of: {string.Join(", ", Tables.Select(known => known.Table))}", "Name a table of the study.");
        var traced = _rows.Table(table);
        if (column is not null && traced.Definition.Columns.All(known => known.Name != column))
        {
            return new Problem("column-unknown", new Place(table), $"no column '{column}'", "a column of the table",
                $"'swingstudy query \"DESCRIBE {table}\"' lists them.");
        }

        if (_rows.Find(traced, key) is not { } row)
        {
            return new Problem("row-unknown", new Place(table), $"no row '{key}'", string.Join('/', traced.Keys),
                $"'swingstudy query \"SELECT {string.Join(", ", traced.Keys)} FROM {table} LIMIT 20\"' shows some.");
        }

        var tree = Node(row, column ?? traced.Shown, depth ?? (traced.IsSummary ? 1 : int.MaxValue), []);
        return _originals.Filled(tree);
    }

    private TraceNode Node(TracedRow row, string? column, int depth, HashSet<(string, string, string?)> above)
    {
        var key = _rows.Table(row.Table).KeyOf(row);
        List<TraceNode> from = [];
        if (depth > 0 && above.Add((row.Table, key, column)))
        {
            foreach (var (source, part) in _lineage.Of(row, column).ToList())
                from.Add(Node(source, part, depth - 1, above));
            above.Remove((row.Table, key, column));
        }

        var origin = row.HasColumn("original_sha256") && row.Text("original_sha256") is { } original
            ? new OriginalRow(original, "", (int)(row.Rows.Integers("original_row")[row.Index] ?? 0), "", null, null, null)
            : null;
        return new TraceNode(row.Table, key, column, column is null ? null : row.Value(column), _lineage.Note(row, column), from, origin);
    }
}
