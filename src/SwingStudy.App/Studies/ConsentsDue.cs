using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Players who take part and whose consent to what the study's sources need is not in force: never asked, or to be asked again.</summary>
internal static class ConsentsDue
{
    /// <summary>One problem for each player and scope.</summary>
    public static IReadOnlyList<Problem> Of(OpenedStudy study)
    {
        var standing = new ConsentStanding(study.Setup.Protocol.Eligibility);
        var scopes = study.Setup.Mappings.SelectMany(mapping => mapping.Consent).Append(ConsentScope.Research).Distinct().Order().ToList();
        return
        [
            .. from person in study.Registry.Participants()
               where person.Status == Participant.Enrolled
               let facts = study.Registry.Facts(person.Code)
               let consents = study.Registry.Consents(person.Code)
               from scope in scopes
               let lacking = standing.Lacking(facts, consents, scope)
               where lacking is not null
               select lacking,
        ];
    }
}
