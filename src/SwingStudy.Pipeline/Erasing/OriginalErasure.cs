using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Redaction;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>Takes a person out of the originals. New bytes are stored first, then recorded, then the old ones destroyed: cut short anywhere, it is done again.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
/// <param name="originals">Its originals; the vault is not locked.</param>
/// <param name="person">The person.</param>
/// <param name="captures">The person's captures, as the tables still hold them.</param>
/// <param name="rejectedOf">Rows of an original that were rejected and are the person's.</param>
internal sealed class OriginalErasure(StudySetup setup, StudyRegistry registry, OriginalStore originals, PersonTexts person, PersonCaptures captures, Func<string, long> rejectedOf)
{
    private readonly ILookup<string, ParticipantId> _sessions = registry.Sessions().Where(session => session.Original is not null)
        .ToLookup(session => session.Original!.Value.ToString(), session => session.Participant, StringComparer.Ordinal);

    /// <summary>Goes through all files that came in.</summary>
    public void Clear(ErasureReport report)
    {
        foreach (var file in registry.IntakeFiles())
        {
            if (registry.StoredHash(file.Hash) is { } stored && originals.Contains(stored))
                Clear(file, stored, report);
        }

        // Whatever an erasure that was cut short had recorded and not yet destroyed.
        foreach (var erased in registry.ErasedOriginals().Where(erased => erased.Stored != erased.Hash))
            originals.Remove(erased.Hash);
    }

    /// <summary>How many originals would go because they are the person's alone, be cut, or go because they were never taken in and name the person.</summary>
    public (int Alone, int Shared, int Naming) Forecast()
    {
        var (alone, shared, naming) = (0, 0, 0);
        foreach (var file in registry.IntakeFiles())
        {
            if (registry.StoredHash(file.Hash) is not { } stored || !originals.Contains(stored))
                continue;
            if (file.Status == IntakeStatus.Taken && IsOfThisPersonAlone(file))
                alone++;
            else if (captures.Rows.ContainsKey(file.Hash) || _sessions[file.Hash.ToString()].Contains(person.Participant))
                shared++;
            else if (FileRedaction.Names(Bytes(stored), person) || person.IsNamedIn(file.InboxPath))
                (shared, naming) = file.Status == IntakeStatus.Taken ? (shared + 1, naming) : (shared, naming + 1);
        }

        return (alone, shared, naming);
    }

    private void Clear(IntakeFile file, Sha256 stored, ErasureReport report)
    {
        var content = Bytes(stored);
        if (file.Status != IntakeStatus.Taken)
        {
            if (FileRedaction.Names(content, person) || person.IsNamedIn(file.InboxPath))
                Drop(file, stored, report);
            return;
        }

        if (IsOfThisPersonAlone(file))
        {
            Drop(file, stored, report);
            return;
        }

        var rows = captures.Rows.GetValueOrDefault(file.Hash) ?? [];
        var cut = setup.Mappings.FirstOrDefault(known => known.Source == file.Source) is { } mapping
            ? FileRedaction.Cut(content, file.InboxPath, mapping, person, rows)
            : new RedactedFile(FileRedaction.Names(content, person) ? RedactionKind.Whole : RedactionKind.Untouched, null, rows);
        if (cut.Kind == RedactionKind.Untouched)
            return;
        var rejected = rejectedOf(file.Hash.ToString());
        var taken = rows.Count > 0 ? rows.Count : Math.Max(0, cut.Lines.Count - rejected);
        Sha256? left = cut.Kind == RedactionKind.Cut ? originals.Put(cut.Content!) : null;
        registry.Erase(erase => erase.Cut(new ErasedOriginal(file.Hash, left, report.Id), taken, rejected));
        if (left != stored)
            originals.Remove(stored);
        if (left is { } hash)
            report.Cut.Add((file.Hash, hash));
        else
            report.GoneWithOthers.Add(file.Hash);
    }

    private bool IsOfThisPersonAlone(IntakeFile file)
    {
        var hasOwn = captures.Rows.ContainsKey(file.Hash) || _sessions[file.Hash.ToString()].Contains(person.Participant);
        return hasOwn && !captures.Shared.Contains(file.Hash) && _sessions[file.Hash.ToString()].All(other => other == person.Participant);
    }

    private byte[] Bytes(Sha256 stored) => originals.ReadAll(stored).Succeeded(out var bytes, out var problems)
        ? bytes
        : throw new IOException($"{problems[0].Place}: {problems[0].Found}. {problems[0].Mend}");

    private void Drop(IntakeFile file, Sha256 stored, ErasureReport report)
    {
        registry.Erase(erase => erase.Drop(new ErasedOriginal(file.Hash, null, report.Id)));
        originals.Remove(stored);
        report.Gone.Add(file.Hash);
    }
}
