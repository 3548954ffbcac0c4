using System.Security.Cryptography;
using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Redaction;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>
/// Erases a person from a study, with everything that could tell of them. Originals first, because the tables say which of their rows are the
/// person's; then tables, registry and other files; then the results of the others are computed again; the names go last, because without them
/// nothing could be found. Killed anywhere, it is run again and finishes.
/// </summary>
/// <remarks>The caller holds the study's writer lock.</remarks>
public sealed class PersonErasure(StudySetup setup, StudyRegistry registry, IdentityStore identities, TimeProvider time)
{
    private readonly TableStore _tables = new(setup.Folder, time);

    /// <summary>Erases a person.</summary>
    /// <param name="participant">Pseudonym.</param>
    /// <param name="actor">Who acts.</param>
    /// <param name="bringUpToDate">Runs all stages: once before, so that recordings without a name are joined to their player's swings and go as well, and once
    /// after, for the results of the others.</param>
    /// <returns>What was done; or the problem <c>participant-unknown</c>, <c>erasure-unfinished</c> or <c>vault-locked</c>, or what stood against a commit.</returns>
    public Outcome<ErasureReport> Run(ParticipantId participant, string actor, Func<IReadOnlyList<Problem>> bringUpToDate)
    {
        if (registry.Participant(participant) is not { } known)
            return identities.IsErased(participant.ToString()) ? Again() : ErasureMessages.Unknown(participant);
        if (registry.Participants().FirstOrDefault(person => person.Status == Participant.BeingErased && person.Code != participant) is { } other)
            return ErasureMessages.Unfinished(other.Code);
        if (identities.Vault == VaultState.Locked)
            return ErasureMessages.VaultLocked;
        if (known.Status != Participant.BeingErased && bringUpToDate() is { Count: > 0 } before)
            return Outcome<ErasureReport>.Failed(before);
        var person = new PersonTexts(participant, identities.Aliases(participant), identities.Names(participant));
        var report = new ErasureReport { Id = Begin(known, actor) };
        if (ClearTables(person, report) is { Count: > 0 } against)
            return Outcome<ErasureReport>.Failed(against);
        new FolderErasure(setup, person).Clear(report);
        if (bringUpToDate() is { Count: > 0 } problems)
            return Outcome<ErasureReport>.Failed(problems);
        Finish(person, actor, report);
        return report;
    }

    /// <summary>Whether a person's erasure began and was cut short: it was asked for then, and only has to be finished.</summary>
    public bool IsBegun(ParticipantId participant) => registry.Participant(participant)?.Status == Participant.BeingErased;

    /// <summary>What <see cref="Run"/> would remove. Nothing is changed.</summary>
    /// <returns>The forecast; or the problem <c>participant-unknown</c> or <c>vault-locked</c>.</returns>
    public Outcome<ErasureForecast> Forecast(ParticipantId participant)
    {
        if (registry.Participant(participant) is null)
            return ErasureMessages.Unknown(participant);
        if (identities.Vault == VaultState.Locked)
            return ErasureMessages.VaultLocked;
        var person = new PersonTexts(participant, identities.Aliases(participant), identities.Names(participant));
        var captures = PersonCaptures.Of(_tables, participant);
        HashSet<string> things = [.. captures.Ids];
        var tables = new TableErasure(_tables, person, things);
        using var originals = Originals();
        var (alone, shared, naming) = new OriginalErasure(setup, registry, originals, person, captures, tables.CountRejected).Forecast();
        var folder = new FolderErasure(setup, person);
        return new ErasureForecast(
            _tables.Names().Select(name => (Name: name, Rows: tables.Count(name))).Where(table => table.Rows > 0).ToDictionary(table => table.Name, table => table.Rows),
            alone, shared, naming, folder.ReleaseNames, folder.Forecast());
    }

    /// <summary>The person was erased before: what a killed run may have left in free pages goes.</summary>
    private ErasureReport Again()
    {
        registry.Compact();
        identities.Compact();
        return new ErasureReport();
    }

    private string Begin(Participant person, string actor)
    {
        if (person.Status == Participant.BeingErased && registry.Erasures().LastOrDefault(erasure => erasure.FinishedAt is null) is { } begun)
            return begun.Id;
        var erasure = new Erasure("erasure-" + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(6)), Now(), null, "{}");
        registry.Act(actor, "people.erase.begin", _ => JsonSerializer.Serialize(new { erasure = erasure.Id }));
        registry.Erase(erase => erase.Begin(person.Code, erasure));
        return erasure.Id;
    }

    private IReadOnlyList<Problem> ClearTables(PersonTexts person, ErasureReport report)
    {
        var captures = PersonCaptures.Of(_tables, person.Participant);
        HashSet<string> things = [.. captures.Ids];
        var erasure = new TableErasure(_tables, person, things);
        using var originals = Originals();
        new OriginalErasure(setup, registry, originals, person, captures, erasure.CountRejected).Clear(report);
        things.UnionWith(registry.ErasedOriginals().Select(erased => erased.Hash).Where(hash => registry.IntakeFile(hash) is null).Select(hash => hash.ToString()));
        foreach (var name in _tables.Names())
        {
            if (erasure.Clear(name).Problems is { Count: > 0 } problems)
                return problems;
        }

        registry.Erase(erase => erase.Remove(person.Participant, captures.Ids, person.Without));
        return [];
    }

    private void Finish(PersonTexts person, string actor, ErasureReport report)
    {
        foreach (var name in _tables.Names())
            report.Tables[name] = _tables.Existing(name)!.CollapseHistory(new CommitInfo { Stage = "erase" });
        // What killed runs of this erasure had done before counts as well.
        var done = registry.ErasedOriginals().Where(erased => erased.Erasure == report.Id).ToList();
        var document = JsonSerializer.Serialize(new
        {
            erasure = report.Id,
            originals_cut = done.Where(erased => erased.Stored is not null).Select(erased => new { original = erased.Hash.ToString(), stored = erased.Stored!.Value.ToString() }),
            originals_gone = done.Where(erased => erased.Stored is null).Select(erased => erased.Hash.ToString()),
            history_begins = report.Tables,
            releases = report.Releases,
        });
        registry.Erase(erase => erase.Note(report.Id, document));
        registry.Act(actor, "people.erase", _ => document);
        identities.Forget(person.Participant);
        registry.Erase(erase => erase.Finish(person.Participant, report.Id, Now()));
        registry.Compact();
        report.Remaining.AddRange(new FolderErasure(setup, person).Remains());
        report.Remaining.AddRange(registry.TablesWith(person.IsNamedIn).Select(table => $"study.db, table {table}"));
    }

    private OriginalStore Originals() => new(setup.Folder, () => identities.OriginalKeys);

    private Instant Now() => Instant.FromDateTimeOffset(time.GetUtcNow());
}
