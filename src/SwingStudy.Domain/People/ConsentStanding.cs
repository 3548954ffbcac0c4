using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.People;

/// <summary>Whether a player's consents allow something now.</summary>
/// <param name="eligibility">Who counts as a minor.</param>
public sealed class ConsentStanding(Eligibility eligibility)
{
    /// <summary>What a scope still lacks; null when it is in force.</summary>
    /// <param name="person">What is known of the player.</param>
    /// <param name="consents">The player's consents, oldest first.</param>
    /// <param name="scope">The scope.</param>
    public Problem? Lacking(PersonFacts person, IReadOnlyList<Consent> consents, ConsentScope scope)
    {
        var own = Newest(consents, scope, ConsentSigner.Participant);
        var guardian = Newest(consents, scope, ConsentSigner.Guardian);
        var assent = Newest(consents, scope, ConsentSigner.Assent);
        // A no is a no, whoever says it and whatever the age: the newest word of each signer must be a yes.
        foreach (var refused in new[] { own, guardian, assent }.OfType<Consent>().Where(consent => !consent.Given))
            return ConsentMessages.Refused(person.Participant, scope, refused.Signer);
        return EligibilityCheck.IsMinor(person, eligibility) switch
        {
            false when own is not null => null,
            false when guardian is not null => ConsentMessages.AgainAtMajority(person.Participant, scope),
            false => ConsentMessages.Missing(person.Participant, scope),
            true when guardian is null => ConsentMessages.NoGuardian(person.Participant, scope),
            true when assent is null => ConsentMessages.NoAssent(person.Participant, scope),
            true => null,
            null => ConsentMessages.AgeUnknown(person.Participant, scope),
        };
    }

    /// <summary>The scopes that are in force, in their order.</summary>
    public IReadOnlyList<ConsentScope> InForce(PersonFacts person, IReadOnlyList<Consent> consents) =>
        [.. Enum.GetValues<ConsentScope>().Where(scope => Lacking(person, consents, scope) is null)];

    private static Consent? Newest(IReadOnlyList<Consent> consents, ConsentScope scope, ConsentSigner signer) =>
        consents.LastOrDefault(consent => consent.Scope == scope && consent.Signer == signer);
}
