using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Adds players and their aliases to a study.</summary>
internal static class PeopleEntry
{
    /// <summary>Adds a player where absent, and the aliases; the ledger gets keyed hashes of the aliases, never their text.</summary>
    /// <returns>What stood in the way; empty when all was added.</returns>
    public static IReadOnlyList<Problem> Add(OpenedStudy study, string actor, TimeProvider time, ParticipantId participant, IEnumerable<string> aliases)
    {
        var given = aliases.ToList();
        var problems = given.Select(alias => study.Identities.Add(participant, alias)).SelectMany(outcome => outcome.Problems).ToList();
        if (problems.Count > 0)
            return problems;
        study.Registry.Act(actor, "people.add", act =>
        {
            if (study.Registry.Participant(participant) is null)
                act.Save(new Participant(participant, "enrolled", Instant.FromDateTimeOffset(time.GetUtcNow())));
            return JsonSerializer.Serialize(new { participant = participant.ToString(), alias_hashes = given.Select(study.Identities.AliasHash) });
        });
        return [];
    }
}
