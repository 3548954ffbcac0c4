using SwingStudy.App.Studies;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Demo;

/// <summary>Enrols the invented players: aliases, age, and a consent of each.</summary>
internal static class DemoPeople
{
    /// <summary>Adds all players.</summary>
    /// <returns>What stood in the way; empty when all take part.</returns>
    public static IReadOnlyList<Problem> Enrol(OpenedStudy study, string actor, TimeProvider time, PlantedTruth truth) =>
        [.. truth.Players.SelectMany(player => Enrol(study, actor, time, player))];

    private static IReadOnlyList<Problem> Enrol(OpenedStudy study, string actor, TimeProvider time, PlantedPlayer player)
    {
        var code = new ParticipantId(player.Code);
        var hand = player.Body.LeftHanded ? "left" : "right";
        var facts = new PersonFacts(code, new Dictionary<string, string>(StringComparer.Ordinal) { [PersonFacts.AgeVariable] = "30-44", [PersonFacts.HandVariable] = hand });
        var problems = PeopleEntry.Add(study, actor, time, code, player.Aliases, facts);
        if (problems.Count > 0)
            return problems;
        var consent = new Consent(code, default, Given: true, ConsentSigner.Participant, PeopleEntry.Now(time)) { Version = "1", Language = "en", TakenBy = "front office", Note = "Invented, as the players are." };
        PeopleEntry.Record(study, actor, consent, [ConsentScope.Coaching, ConsentScope.Research]);
        return [];
    }
}
