using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>The captures of one person: those that name the person, and those without a player that were linked to the person's swings.</summary>
internal sealed class PersonCaptures
{
    private PersonCaptures()
    {
    }

    /// <summary>Identifiers.</summary>
    public HashSet<string> Ids { get; } = new(StringComparer.Ordinal);

    /// <summary>Rows of each original.</summary>
    public Dictionary<Sha256, HashSet<int>> Rows { get; } = [];

    /// <summary>Originals from which others have captures, too.</summary>
    public HashSet<Sha256> Shared { get; } = [];

    /// <summary>Reads what the tables hold; nothing once they were cleared.</summary>
    public static PersonCaptures Of(TableStore tables, ParticipantId participant)
    {
        var found = new PersonCaptures();
        if (tables.Existing("links") is { } links)
        {
            foreach (var rows in links.Read(columns: ["capture_id"], partition: participant.ToString()))
                found.Ids.UnionWith(rows.Texts("capture_id").OfType<string>());
        }

        if (tables.Existing("captures") is not { } captures)
            return found;
        foreach (var file in captures.Files())
        {
            foreach (var rows in captures.ReadFiles([file], ["capture_id", "original_sha256", "original_row"]))
            {
                var (ids, originals, numbers) = (rows.Texts("capture_id"), rows.Texts("original_sha256"), rows.Integers("original_row"));
                for (var row = 0; row < rows.Count; row++)
                {
                    var original = new Sha256(originals[row]!);
                    if (file.Partition != participant.ToString() && !found.Ids.Contains(ids[row]!))
                    {
                        found.Shared.Add(original);
                        continue;
                    }

                    found.Ids.Add(ids[row]!);
                (found.Rows.TryGetValue(original, out var lines) ? lines : found.Rows[original] = []).Add(checked((int)(numbers[row] ?? 1)));
                }
            }
        }

        return found;
    }
}
