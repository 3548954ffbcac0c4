using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.People;

/// <summary>Whether what is known of a player fits the protocol. What is not known is no reason against; criteria in words are for people.</summary>
public static class EligibilityCheck
{
    /// <summary>All that stands against the player; empty when nothing does.</summary>
    public static IReadOnlyList<Problem> Check(PersonFacts person, Eligibility eligibility) => [.. Problems(person, eligibility)];

    /// <summary>Whether the player is, or may be, a minor where the study runs. Nobody's age is guessed: a player without a recorded band counts as
    /// of age where the protocol takes adults alone, and as unknown otherwise.</summary>
    /// <returns>Null when it cannot be told.</returns>
    public static bool? IsMinor(PersonFacts person, Eligibility eligibility) =>
        person.Age is { } age ? age.MayBeBelow(eligibility.AgeOfMajority) : eligibility.MinorsAllowed ? null : false;

    private static IEnumerable<Problem> Problems(PersonFacts person, Eligibility eligibility)
    {
        var place = new Place(person.Participant.ToString());
        if (person.Age is { } age)
        {
            var band = person.Values[PersonFacts.AgeVariable];
            if (eligibility.MinimumAge is { } least && age.IsBelow(least))
            {
                yield return new Problem("not-eligible-age", place, $"age band {band}", string.Create(CultureInfo.InvariantCulture, $"the protocol's minimum age of {least}"),
                    "Do not enrol this player; who may take part stands in the protocol under 'eligibility', and changing it is an amendment.");
            }
            else if (!eligibility.MinorsAllowed && age.IsBelow(eligibility.AgeOfMajority))
            {
                yield return new Problem("not-eligible-minor", place, $"age band {band}",
                    string.Create(CultureInfo.InvariantCulture, $"players of age ({eligibility.AgeOfMajority} here): the protocol does not allow minors"),
                    "Do not enrol this player; a study with minors needs a protocol that says so, and the ethics committee's word.");
            }
        }

        foreach (var (variable, allowed) in eligibility.Requires.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            if (person.Values.TryGetValue(variable, out var value) && !allowed.Contains(value))
            {
                yield return new Problem("not-eligible", place with { Column = variable }, $"'{value}'", $"as the protocol requires: {string.Join(", ", allowed)}",
                    "Do not enrol this player, or correct what was recorded with 'swingstudy people edit'.");
            }
        }
    }
}
