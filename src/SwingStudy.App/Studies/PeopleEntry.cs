using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Adds players, their aliases, facts and consents to a study.</summary>
internal static class PeopleEntry
{
    /// <summary>Adds a player where absent, and the aliases; the ledger gets keyed hashes of the aliases, never their text.</summary>
    /// <returns>What stood in the way; empty when all was added.</returns>
    public static IReadOnlyList<Problem> Add(OpenedStudy study, string actor, TimeProvider time, ParticipantId participant, IEnumerable<string> aliases, PersonFacts? facts = null)
    {
        if (study.Identities.IsErased(participant.ToString()))
            return [ParticipantCodes.Erased(participant)];
        var given = aliases.ToList();
        var problems = given.Select(alias => study.Identities.Add(participant, alias)).SelectMany(outcome => outcome.Problems).ToList();
        if (problems.Count > 0)
            return problems;
        study.Registry.Act(actor, "people.add", act =>
        {
            if (study.Registry.Participant(participant) is null)
                act.Save(new Participant(participant, Participant.Enrolled, Now(time)));
            if (facts is not null)
                act.Save(facts);
            return JsonSerializer.Serialize(new
            {
                participant = participant.ToString(),
                alias_hashes = given.Select(study.Identities.AliasHash),
                facts = facts?.Values.Select(fact => $"{participant} {fact.Key}={fact.Value}") ?? [],
            });
        });
        return [];
    }

    /// <summary>Records a yes or no of one signer to some scopes.</summary>
    /// <param name="study">The study.</param>
    /// <param name="actor">Who records it.</param>
    /// <param name="consent">The consent; its scope is replaced by each of <paramref name="scopes"/>.</param>
    /// <param name="scopes">The scopes.</param>
    public static void Record(OpenedStudy study, string actor, Consent consent, IEnumerable<ConsentScope> scopes) => study.Registry.Act(actor, "people.consent", act =>
    {
        var all = scopes.ToList();
        foreach (var scope in all)
            act.Add(consent with { Scope = scope });
        return JsonSerializer.Serialize(new
        {
            participant = consent.Participant.ToString(),
            scopes = all.Select(Word.Of),
            given = consent.Given,
            signer = Word.Of(consent.Signer),
            version = consent.Version,
            language = consent.Language,
        });
    });

    /// <summary>This moment.</summary>
    public static Instant Now(TimeProvider time) => Instant.FromDateTimeOffset(time.GetUtcNow());
}
