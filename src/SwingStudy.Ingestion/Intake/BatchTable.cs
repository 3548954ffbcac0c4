using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// What the files of a run add to one table. A file with many rows has data files of its own; the rows of small files wait and are written at the commit of
/// their batch, one data file a player: thousands of files with a row each would make a table that is slow to open, for ever.
/// </summary>
internal sealed class BatchTable
{
    private readonly List<DataFile> _own = [];
    private readonly SortedDictionary<string, List<(Sha256 Original, RowSet Rows)>> _waiting = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<DataFile>> _standing;
    private readonly HashSet<string> _leftovers;

    /// <param name="table">The table.</param>
    /// <param name="done">Hashes of originals that earlier runs took; files with rows of others were left by a run that was cut short.</param>
    public BatchTable(DeltaTable table, IReadOnlySet<string> done)
    {
        Table = table;
        var files = table.Files().ToLookup(file => file.OriginalHashes.All(original => done.Contains(original) || !IsOriginal(original)));
        _leftovers = [.. files[false].Select(file => file.Path)];
        _standing = files[true].GroupBy(Participant, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.ToList(), StringComparer.Ordinal);
    }

    /// <summary>The table.</summary>
    public DeltaTable Table { get; }

    /// <summary>Values that wait, curves sample by sample.</summary>
    public long WaitingValues { get; private set; }

    /// <summary>Files that a run which was cut short left behind, and that no batch has written again.</summary>
    public IReadOnlySet<string> Leftovers => _leftovers;

    /// <summary>Files that stand for a player, or for nobody: those of earlier runs and of this one.</summary>
    public IReadOnlyList<DataFile> Standing(string participant) => _standing.GetValueOrDefault(participant) ?? [];

    /// <summary>Files that stand for anybody.</summary>
    public IEnumerable<DataFile> AllStanding => _standing.Values.SelectMany(files => files);

    /// <summary>Rows of a player, or of nobody, that wait.</summary>
    public IEnumerable<RowSet> Waiting(string participant) => _waiting.GetValueOrDefault(participant, []).Select(set => set.Rows);

    /// <summary>Rows of an original that wait.</summary>
    public IEnumerable<RowSet> WaitingOf(string original) =>
        _waiting.Values.SelectMany(sets => sets.Where(set => set.Original.ToString() == original).Select(set => set.Rows));

    /// <summary>Adds what a file gives.</summary>
    public void Add(Sha256 original, TableRows added)
    {
        foreach (var file in added.Files)
        {
            _own.Add(file);
            Stand(file);
        }

        foreach (var (participant, rows) in added.Waiting.Where(set => set.Rows.Count > 0))
        {
            if (!_waiting.TryGetValue(participant ?? "", out var sets))
                _waiting[participant ?? ""] = sets = [];
            sets.Add((original, rows));
            WaitingValues += Values(rows);
        }
    }

    /// <summary>Writes what waits under the name of the batch.</summary>
    /// <returns>All files of the batch.</returns>
    public IReadOnlyList<DataFile> Complete(string unit)
    {
        List<DataFile> files = [.. _own];
        foreach (var (participant, sets) in _waiting)
        {
            var written = Write(participant, unit, sets);
            files.Add(written);
            Stand(written);
        }

        _own.Clear();
        _waiting.Clear();
        WaitingValues = 0;
        _leftovers.ExceptWith(files.Select(file => file.Path));
        return files;
    }

    private DataFile Write(string participant, string unit, List<(Sha256 Original, RowSet Rows)> sets)
    {
        var originals = string.Join(' ', sets.Select(set => set.Original.ToString()).Distinct(StringComparer.Ordinal));
        using var writer = Table.NewFile(participant.Length == 0 ? null : participant, unit, originals == unit ? "" : originals);
        var group = new List<RowSet>();
        var (rows, values) = (0, 0L);
        foreach (var (_, set) in sets)
        {
            if (group.Count > 0 && (rows + set.Count > DataGroups.Rows || values + Values(set) > DataGroups.MostValues))
                Append();
            group.Add(set);
            (rows, values) = (rows + set.Count, values + Values(set));
        }

        Append();
        return writer.Complete();

        void Append()
        {
            writer.Append(JoinedRows.Of(Table.Definition, group));
            group.Clear();
            (rows, values) = (0, 0);
        }
    }

    private void Stand(DataFile file)
    {
        if (!_standing.TryGetValue(Participant(file), out var files))
            _standing[Participant(file)] = files = [];
        files.Add(file);
    }

    private static string Participant(DataFile file) => file.Partition ?? "";

    private static long Values(RowSet rows) => rows.Columns.Sum(column => column is NumberListColumn lists ? lists.Values.Sum(list => list?.LongLength ?? 1) : column.Length);

    private static bool IsOriginal(string unit) => unit.Length == 64 && unit.All(char.IsAsciiHexDigitLower);
}
