using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>The files of a stage's inputs at the versions with which its run began, and which of them concern a unit.</summary>
internal sealed class InputFiles
{
    private readonly BoundStage _stage;
    private readonly DeltaTable[] _tables;
    private readonly ILookup<string, DataFile>[] _byParticipant;
    private readonly ILookup<string, DataFile>[] _byUnit;
    private readonly IReadOnlyList<DataFile>[] _all;
    private readonly IReadOnlyList<DataFile>?[] _withValues;
    private readonly Lazy<RowSet>[] _ofAll;
    private readonly SharedRows _sharedRows;
    private readonly ILookup<string, string> _originalsOf;
    private readonly ILookup<string, DataFile>?[] _byOriginal;
    private readonly Dictionary<string, FileTimes> _times = new(StringComparer.Ordinal);

    public InputFiles(BoundStage stage, TableStore store, SharedRows sharedRows)
    {
        (_stage, _sharedRows) = (stage, sharedRows);
        _tables = [.. stage.Inputs.Select(input => store.Table(input.Table))];
        Versions = stage.Inputs.Select((input, i) => (input.Table.Name, Version: _tables[i].CurrentVersion))
            .ToDictionary(pair => pair.Name, pair => pair.Version, StringComparer.Ordinal);
        _all = [.. _tables.Select(table => table.Files())];
        _withValues = new IReadOnlyList<DataFile>?[_all.Length];
        _ofAll = [.. Enumerable.Range(0, _all.Length).Select(i => new Lazy<RowSet>(() => Joined(i, OfAll(i).Select(file => ReadFile(i, file)))))];
        _byParticipant = [.. _all.Select(files => files.ToLookup(file => file.Partition ?? "", StringComparer.Ordinal))];
        _byUnit = [.. _all.Select(files => files.ToLookup(file => file.Unit, StringComparer.Ordinal))];
        var captures = stage.Inputs.Any(input => input.Slice == Slice.SameOriginals) ? store.Existing("captures")?.Files() ?? [] : [];
        _originalsOf = captures.SelectMany(file => file.OriginalHashes.Select(original => (Participant: file.Partition ?? "", original)))
            .ToLookup(pair => pair.Participant, pair => pair.original, StringComparer.Ordinal);
        _byOriginal = [.. _all.Select((files, i) => stage.Inputs[i].Slice is Slice.SameOriginals or Slice.SameCaptures
            ? files.SelectMany(file => file.OriginalHashes.Select(original => (original, file))).ToLookup(pair => pair.original, pair => pair.file, StringComparer.Ordinal)
            : null)];
        for (var i = 0; i < _all.Length; i++)
        {
            if (stage.Inputs[i].Slice == Slice.SameTime)
            {
                foreach (var file in _all[i])
                    _times[file.Path] = FileTimes.Of(file);
            }
        }
    }

    /// <summary>Version of each input table.</summary>
    public IReadOnlyDictionary<string, long> Versions { get; }

    /// <summary>Players with rows in an input table.</summary>
    public IEnumerable<string> Participants =>
        _byParticipant.SelectMany(files => files.Select(group => group.Key)).Where(participant => participant.Length > 0);

    /// <summary>For each input, the files that concern a unit, ordered by path.</summary>
    public IReadOnlyList<DataFile>[] For(WorkUnit unit)
    {
        var files = new IReadOnlyList<DataFile>[_tables.Length];
        for (var i = 0; i < files.Length; i++)
        {
            var own = _byParticipant[i][unit.Participant ?? ""];
            files[i] = _stage.Inputs[i].Slice switch
            {
                Slice.SameTime => [.. InTime(i, unit)],
                Slice.SameUnit => [.. _byUnit[i][unit.Name]],
                Slice.SameCaptures => [],
                Slice.SameParticipant => [.. own],
                Slice.SameOriginals => Written(_byOriginal[i]!, _originalsOf[unit.Participant ?? ""], null),
                Slice.WholeTable or Slice.WithValues => OfAll(i),
                var slice => throw new InvalidOperationException($"Unknown slice {slice}."),
            };
        }

        // Curves and events of a capture lie in files of the same original and player as the capture.
        for (var i = 0; i < files.Length; i++)
        {
            if (_stage.Inputs[i].Slice == Slice.SameCaptures)
                files[i] = Written(_byOriginal[i]!, files[Captures].SelectMany(file => file.OriginalHashes), files[Captures].Select(file => file.Partition).ToHashSet());
        }

        return files;
    }

    /// <summary>The files with rows of some originals, ordered by path; when players are given, only theirs.</summary>
    private static IReadOnlyList<DataFile> Written(ILookup<string, DataFile> files, IEnumerable<string> originals, HashSet<string?>? participants) =>
    [
        .. originals.Distinct(StringComparer.Ordinal).SelectMany(original => files[original]).Where(file => participants?.Contains(file.Partition) != false)
            .DistinctBy(file => file.Path, StringComparer.Ordinal).OrderBy(file => file.Path, StringComparer.Ordinal),
    ];

    /// <summary>Position of <c>captures</c> among the inputs.</summary>
    private int Captures => _stage.Inputs.Select((input, i) => (input.Table.Name, i)).First(input => input.Name == "captures").i;

    /// <summary>The files of a slice that is the same for all units.</summary>
    private IReadOnlyList<DataFile> OfAll(int input) => _stage.Inputs[input].Slice == Slice.WholeTable
        ? _all[input]
        : _withValues[input] ??= [.. _all[input].Where(file => FileValues.MayHold(file, _stage.Inputs[input].Shape))];

    /// <summary>The rows of a unit. What all units see is read once; files that neighbouring units share are read once and kept in <paramref name="kept"/>.</summary>
    public IReadOnlyDictionary<string, RowSet> Read(WorkUnit unit, IReadOnlyList<DataFile>[] files, Dictionary<string, RowSet> kept)
    {
        var rows = new Dictionary<string, RowSet>(StringComparer.Ordinal);
        for (var i = 0; i < files.Length; i++)
        {
            var input = _stage.Inputs[i];
            if (input.Slice is Slice.WholeTable or Slice.WithValues)
            {
                rows[input.Table.Name] = _ofAll[i].Value;
                continue;
            }

            var sets = new List<RowSet>(files[i].Count);
            foreach (var file in files[i])
            {
                var all = input.Slice == Slice.SameTime && !unit.Encloses(file.Partition, _times[file.Path]) ? Kept(i, file, kept) : ReadFile(i, file);
                sets.Add(input.Slice == Slice.SameTime ? Within(unit, file.Partition, all) : all);
            }

            rows[input.Table.Name] = Joined(i, sets);
        }

        foreach (var input in _stage.Inputs.Where(input => input.Slice == Slice.SameCaptures))
            rows[input.Table.Name] = OfCaptures(rows[input.Table.Name], rows["captures"]);

        return rows;
    }

    /// <summary>Files of the unit's players and of nobody that may hold rows of its time; nobody's first, then player by player.</summary>
    private IEnumerable<DataFile> InTime(int input, WorkUnit unit) =>
        unit.Sessions.Select(session => session.Participant).Append(unit.Participant).Append(null).Distinct().Order(StringComparer.Ordinal)
            .SelectMany(participant => _byParticipant[input][participant ?? ""].Where(file => unit.Touches(participant, _times[file.Path])));

    private static RowSet OfCaptures(RowSet rows, RowSet captures)
    {
        var known = captures.Texts("capture_id").ToHashSet(StringComparer.Ordinal);
        var ids = rows.Texts("capture_id");
        int[] own = [.. Enumerable.Range(0, rows.Count).Where(row => known.Contains(ids[row]))];
        return own.Length == rows.Count ? rows : rows.Select(own);
    }

    private static RowSet Within(WorkUnit unit, string? participant, RowSet rows)
    {
        var (struck, recorded) = (rows.Instants("struck_at"), rows.Instants("recorded_at"));
        var own = new List<int>();
        for (var i = 0; i < struck.Length; i++)
        {
            if (unit.Owns(participant, struck[i] == InstantColumn.MissingMillis ? recorded[i] : struck[i]))
                own.Add(i);
        }

        return own.Count == rows.Count ? rows : rows.Select(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(own));
    }

    private RowSet Kept(int input, DataFile file, Dictionary<string, RowSet> kept)
    {
        var key = $"{input}/{file.Path}";
        if (!kept.TryGetValue(key, out var rows))
            kept[key] = rows = ReadFile(input, file);
        return rows;
    }

    private RowSet Joined(int input, IEnumerable<RowSet> sets) => JoinedRows.Of(_stage.Inputs[input].Shape, [.. sets.Where(set => set.Count > 0)]);

    private RowSet ReadFile(int input, DataFile file) => _sharedRows.Read(_stage.Inputs[input], file);
}
