using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Why no session of a player may begin now.</summary>
internal static class SessionRefusals
{
    /// <summary>All reasons; empty when there is none.</summary>
    public static IReadOnlyList<Problem> Of(OpenedStudy study, ParticipantId participant)
    {
        if (study.Registry.Participant(participant)!.Status != Participant.Enrolled)
        {
            return [new Problem("participant-left", new Place(participant.ToString()), $"{participant} has withdrawn", "a player who takes part",
                "Record nothing more of this player. If the player comes back, that is a new consent and a new pseudonym.")];
        }

        var stopped = SafetyRecords.Open(study).Where(stop => stop.Participant == participant).Select(SafetyRecords.AsProblem);
        var lacking = new ConsentStanding(study.Setup.Protocol.Eligibility).Lacking(study.Registry.Facts(participant), study.Registry.Consents(participant), ConsentScope.Research);
        return [.. stopped, .. lacking is null ? (Problem[])[] : [lacking]];
    }
}
