using System.Globalization;
using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Audit;

/// <summary>What erasures left: nothing that should be gone, and a list of what can no longer be reproduced.</summary>
internal sealed class ErasureCheck(StudyRegistry registry, OriginalStore originals)
{
    public AuditCheck Run()
    {
        var erasures = registry.Erasures();
        var erased = registry.ErasedOriginals();
        List<Problem> problems =
        [
            .. registry.Participants().Where(person => person.Status == Participant.BeingErased).Select(person => new Problem("erasure-unfinished", new Place("study.db"),
                "an erasure was cut short", "finished erasures", $"Finish it: 'swingstudy people erase {person.Code}'.")),
            .. erased.Where(original => original.Stored != original.Hash && originals.Contains(original.Hash)).Select(original => new Problem("erased-bytes-left", new Place($"originals/{original.Hash.Short}"),
                "bytes that an erasure destroyed are back", "no such bytes", "Somebody brought them back, perhaps with a backup: delete them, and erase in the backup too.")),
        ];
        return new AuditCheck("erasures", erasures.Count, "erasures, nothing left of them", problems)
        {
            Remarks =
            [
                .. erased.Where(original => original.Stored is null).Select(original => registry.IntakeFile(original.Hash) is null
                    ? $"Original {original.Hash.Short} is gone: it was the person's alone."
                    : $"Original {original.Hash.Short} is gone: rows of others that came from it cannot be followed to raw text any more."),
                .. erased.Where(original => original.Stored is not null).Select(original => $"Original {original.Hash.Short} was cut: what is stored now is {original.Stored!.Value.Short}, with the other rows on their lines."),
                .. erasures.SelectMany(Remarks),
            ],
        };
    }

    private static IEnumerable<string> Remarks(Erasure erasure)
    {
        using var document = JsonDocument.Parse(erasure.Document);
        if (document.RootElement.TryGetProperty("history_begins", out var tables))
        {
            foreach (var table in tables.EnumerateObject())
                yield return string.Create(CultureInfo.InvariantCulture, $"Table {table.Name}: versions before {table.Value.GetInt64()} are gone ({erasure.Id}).");
        }

        if (document.RootElement.TryGetProperty("releases", out var releases))
        {
            foreach (var release in releases.EnumerateArray())
                yield return $"Release {release.GetString()} can no longer be reproduced ({erasure.Id}).";
        }
    }
}
