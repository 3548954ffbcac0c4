using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds captures of earlier files: those of finished intakes, and those of this run, committed or waiting.</summary>
/// <param name="captures">The captures of the run.</param>
internal sealed class EarlierCaptures(BatchTable captures)
{
    private static readonly string[] KeyColumns = ["capture_id", "source", "sequence", "recorded_at", "is_practice", "original_sha256", "original_row", "revision_of"];

    /// <summary>The standing captures of a player and source between two times, by key. What was replaced does not stand.</summary>
    /// <param name="participant">The player.</param>
    /// <param name="source">The source.</param>
    /// <param name="variables">Variables to read with them.</param>
    /// <param name="from">First time, milliseconds since 1970 UTC.</param>
    /// <param name="upTo">Last time.</param>
    public IReadOnlyDictionary<CaptureKey, EarlierCapture> Find(ParticipantId participant, string source, IEnumerable<string> variables, long from, long upTo)
    {
        var found = new Dictionary<CaptureKey, EarlierCapture>();
        var player = participant.ToString();
        string[] columns = [.. KeyColumns, .. variables];
        List<RowSet> rows =
        [
            .. captures.Table.ReadFiles(captures.Standing(player), columns, [new RowRange("recorded_at", from, upTo)]),
            .. captures.Waiting(player).Where(set => set.Instants("recorded_at").AsSpan().ContainsAnyInRange(from, upTo)),
        ];
        if (rows.Count == 0)
            return found;
        var replaced = rows.SelectMany(set => set.Texts("revision_of")).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var ordinals = new Dictionary<(string, long), int>();
        foreach (var set in rows)
        {
            var (ids, sources, originals) = (set.Texts("capture_id"), set.Texts("source"), set.Texts("original_sha256"));
            var (numbers, times) = (set.Integers("sequence"), set.Instants("recorded_at"));
            for (var row = 0; row < set.Count; row++)
            {
                if (sources[row] != source || times[row] < from || times[row] > upTo || replaced.Contains(ids[row]!))
                    continue;
                var ordinal = numbers[row] is null ? Next(ordinals, (originals[row]!, times[row])) : 0;
                found[new CaptureKey(times[row], numbers[row] ?? long.MinValue, ordinal)] = new EarlierCapture(ids[row]!, originals[row]!, set, row);
            }
        }

        return found;
    }

    /// <summary>Rows that each original has for a player.</summary>
    public IReadOnlyDictionary<string, long> RowsByOriginal(ParticipantId participant) =>
        Rows(participant, ["original_sha256"]).SelectMany(set => set.Texts("original_sha256")).CountBy(original => original!, StringComparer.Ordinal)
            .ToDictionary(pair => pair.Key, pair => (long)pair.Value, StringComparer.Ordinal);

    /// <summary>Values of some variables in all captures of a player, file by file, with their sources.</summary>
    public IEnumerable<RowSet> Values(ParticipantId participant, IEnumerable<string> variables) => Rows(participant, ["source", .. variables]);

    private IEnumerable<RowSet> Rows(ParticipantId participant, IReadOnlyList<string> columns) =>
        captures.Table.ReadFiles(captures.Standing(participant.ToString()), columns).Concat(captures.Waiting(participant.ToString()));

    private static int Next(Dictionary<(string, long), int> ordinals, (string, long) key)
    {
        var ordinal = ordinals.GetValueOrDefault(key);
        ordinals[key] = ordinal + 1;
        return ordinal;
    }
}
