using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds captures of earlier files: those committed by finished intakes, and those of this run.</summary>
/// <param name="table">The captures.</param>
/// <param name="unfinished">Originals whose rows a run that was cut short left behind; they do not count.</param>
internal sealed class EarlierCaptures(DeltaTable table, IReadOnlySet<string> unfinished)
{
    private static readonly string[] KeyColumns = ["capture_id", "source", "sequence", "recorded_at", "is_practice", "original_sha256", "original_row", "revision_of"];
    private readonly List<DataFile> _files = [.. table.Files().Where(file => !unfinished.Contains(file.Unit))];

    /// <summary>Adds what a file of this run wrote.</summary>
    public void Add(IEnumerable<DataFile> files) => _files.AddRange(files);

    /// <summary>The standing captures of a player and source between two times, by key. What was replaced does not stand.</summary>
    /// <param name="participant">The player.</param>
    /// <param name="source">The source.</param>
    /// <param name="variables">Variables to read with them.</param>
    /// <param name="from">First time, milliseconds since 1970 UTC.</param>
    /// <param name="upTo">Last time.</param>
    public IReadOnlyDictionary<CaptureKey, EarlierCapture> Find(ParticipantId participant, string source, IEnumerable<string> variables, long from, long upTo)
    {
        var files = FilesOf(participant);
        var found = new Dictionary<CaptureKey, EarlierCapture>();
        if (files.Count == 0)
            return found;
        string[] columns = [.. KeyColumns, .. variables];
        var rows = table.ReadFiles(files, columns, [new RowRange("recorded_at", from, upTo)]).ToList();
        var replaced = rows.SelectMany(set => set.Texts("revision_of")).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var ordinals = new Dictionary<(string, long), int>();
        foreach (var set in rows)
        {
            var (ids, sources, originals) = (set.Texts("capture_id"), set.Texts("source"), set.Texts("original_sha256"));
            var (numbers, times) = (set.Integers("sequence"), set.Instants("recorded_at"));
            for (var row = 0; row < set.Count; row++)
            {
                if (sources[row] != source || replaced.Contains(ids[row]!))
                    continue;
                var ordinal = numbers[row] is null ? Next(ordinals, (originals[row]!, times[row])) : 0;
                found[new CaptureKey(times[row], numbers[row] ?? long.MinValue, ordinal)] = new EarlierCapture(ids[row]!, originals[row]!, set, row);
            }
        }

        return found;
    }

    /// <summary>Rows that each original has for a player.</summary>
    public IReadOnlyDictionary<string, long> RowsByOriginal(ParticipantId participant) =>
        FilesOf(participant).GroupBy(file => file.Unit).ToDictionary(group => group.Key, group => group.Sum(file => file.Rows), StringComparer.Ordinal);

    /// <summary>Values of some variables in all captures of a player and source, original by original.</summary>
    public IEnumerable<RowSet> Values(ParticipantId participant, IEnumerable<string> variables) =>
        table.ReadFiles(FilesOf(participant), ["source", .. variables]);

    private List<DataFile> FilesOf(ParticipantId participant) => [.. _files.Where(file => (file.Partition ?? "") == participant.ToString())];

    private static int Next(Dictionary<(string, long), int> ordinals, (string, long) key)
    {
        var ordinal = ordinals.GetValueOrDefault(key);
        ordinals[key] = ordinal + 1;
        return ordinal;
    }
}
