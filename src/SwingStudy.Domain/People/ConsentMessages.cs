using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.People;

/// <summary>All messages about consents that are not in force.</summary>
internal static class ConsentMessages
{
    private const string ThenIngest = "then 'swingstudy ingest' tries the held files again.";

    internal static Problem Missing(ParticipantId person, ConsentScope scope) => new("consent-missing", new Place(person.ToString()),
        $"no consent to '{Word.Of(scope)}'", "the player's own consent before any data of that scope",
        $"Once it is signed: 'swingstudy people consent {person} --scope {Word.Of(scope)}'; {ThenIngest}");

    internal static Problem Refused(ParticipantId person, ConsentScope scope, ConsentSigner signer) => new("consent-refused", new Place(person.ToString()),
        $"'{Word.Of(scope)}' was refused or taken back ({Word.Of(signer)})", "a consent in force",
        "Take this player's rows out of the export, or leave the file out with 'swingstudy decide file'. To refuse costs the player nothing.");

    internal static Problem NoGuardian(ParticipantId person, ConsentScope scope) => new("guardian-missing", new Place(person.ToString()),
        $"{person} is or may be a minor, and no guardian consented to '{Word.Of(scope)}'", "a guardian's consent and the player's own assent",
        $"Once a guardian has signed: 'swingstudy people consent {person} --scope {Word.Of(scope)} --by-guardian'; the player assents with '--assent'; {ThenIngest}");

    internal static Problem NoAssent(ParticipantId person, ConsentScope scope) => new("assent-missing", new Place(person.ToString()),
        $"{person} is or may be a minor, and has not assented to '{Word.Of(scope)}'", "the player's own assent beside the guardian's consent",
        $"Ask the player; on a yes: 'swingstudy people consent {person} --scope {Word.Of(scope)} --assent'; {ThenIngest}");

    internal static Problem AgainAtMajority(ParticipantId person, ConsentScope scope) => new("consent-again", new Place(person.ToString()),
        $"only a guardian consented to '{Word.Of(scope)}', and {person} is of age now", "the player's own consent",
        $"Ask the player again; on a yes: 'swingstudy people consent {person} --scope {Word.Of(scope)}'; {ThenIngest}");

    internal static Problem AgeUnknown(ParticipantId person, ConsentScope scope) => new("age-unknown", new Place(person.ToString()),
        $"no age band of {person}, and the protocol takes minors: nobody can tell who has to consent to '{Word.Of(scope)}'", "an age band",
        $"'swingstudy people edit {person} --age-band 18-29' (or another band); {ThenIngest}");
}
