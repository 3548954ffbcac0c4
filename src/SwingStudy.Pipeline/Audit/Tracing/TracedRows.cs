using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>Rows of the newest versions of a study's tables; what is read of a player is kept.</summary>
internal sealed class TracedRows
{
    private const string SwingPlace = "swing ";
    private const string SessionPlace = "session ";
    private readonly TableStore _store;
    private readonly Dictionary<string, TracedTable> _tables;
    private readonly Dictionary<(string Table, string? Participant), RowSet> _read = [];
    private readonly Dictionary<string, ILookup<string, TracedRow>> _captures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, CountedSwings> _counted = new(StringComparer.Ordinal);

    public TracedRows(StudySetup setup)
    {
        _store = new TableStore(setup.Folder);
        _tables = TracedTable.All(setup.Dictionary).ToDictionary(table => table.Definition.Name, StringComparer.Ordinal);
    }

    /// <summary>The table of that name.</summary>
    public TracedTable Table(string name) => _tables[name];

    /// <summary>The first row of that key, looked for file by file.</summary>
    public TracedRow? Find(TracedTable table, string key)
    {
        var stored = _store.Table(table.Definition);
        foreach (var rows in stored.CurrentVersion < 0 ? [] : stored.Read())
        {
            for (var row = 0; row < rows.Count; row++)
            {
                if (table.KeyOf(new TracedRow(rows, row)) == key)
                    return new TracedRow(rows, row);
            }
        }

        return null;
    }

    /// <summary>The rows of one player, or those that name nobody when <paramref name="participant"/> is null, of a table that is kept player by player.</summary>
    public IEnumerable<TracedRow> Of(string table, string? participant)
    {
        var rows = RowsOf(table, participant);
        return Enumerable.Range(0, rows.Count).Select(row => new TracedRow(rows, row));
    }

    /// <summary>The rows of a whole table, one after the other.</summary>
    public IEnumerable<TracedRow> All(string table)
    {
        var stored = _store.Table(_tables[table].Definition);
        return (stored.CurrentVersion < 0 ? [] : stored.Read()).SelectMany(rows => Enumerable.Range(0, rows.Count).Select(row => new TracedRow(rows, row)));
    }

    /// <summary>The captures of a swing.</summary>
    public IEnumerable<TracedRow> CapturesOf(string participant, string swing) => Captures(participant)[SwingPlace + swing];

    /// <summary>The captures of a session that belong to no swing: empty plates, quiet standing, records without a swing.</summary>
    public IEnumerable<TracedRow> CapturesBeside(string participant, string session) => Captures(participant)[SessionPlace + session];

    /// <summary>The swings of a player whose value of an outcome counts, in the order of time.</summary>
    public IEnumerable<TracedRow> Counted(string participant, string outcome)
    {
        if (!_counted.TryGetValue(participant, out var counted))
            _counted[participant] = counted = new CountedSwings(RowsOf("swings", participant), RowsOf("flags", participant));
        var places = counted.Rows.Texts("swing_id").Index().ToDictionary(found => found.Item!, found => found.Index, StringComparer.Ordinal);
        return counted.Values(outcome).Select(value => new TracedRow(counted.Rows, places[value.Swing]));
    }

    private ILookup<string, TracedRow> Captures(string participant)
    {
        if (_captures.TryGetValue(participant, out var known))
            return known;
        var places = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var link in Of("links", participant))
        {
            if (link.Text("swing_id") is { } swing)
                places[link.Text("capture_id")!] = SwingPlace + swing;
            else if (link.Text("session") is { } session)
                places[link.Text("capture_id")!] = SessionPlace + session;
        }

        // A record that names nobody is a swing's by its clock alone.
        return _captures[participant] = Of("captures", participant).Concat(Of("captures", null)).Where(row => places.ContainsKey(row.Text("capture_id")!))
            .ToLookup(row => places[row.Text("capture_id")!], StringComparer.Ordinal);
    }

    private RowSet RowsOf(string table, string? participant)
    {
        if (_read.TryGetValue((table, participant), out var known))
            return known;
        var stored = _store.Table(_tables[table].Definition);
        var files = stored.CurrentVersion < 0 ? [] : stored.Files().Where(file => file.Partition == participant);
        return _read[(table, participant)] = JoinedRows.Of(stored.Definition, [.. stored.ReadFiles(files)]);
    }
}
