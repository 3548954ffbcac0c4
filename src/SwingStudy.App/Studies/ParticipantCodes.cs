using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Studies;

/// <summary>Pseudonyms as people type them.</summary>
internal static class ParticipantCodes
{
    /// <summary>Reads a pseudonym.</summary>
    public static Outcome<ParticipantId> Read(string text) => ParticipantId.IsValid(text)
        ? new ParticipantId(text)
        : new Problem("participant-code", new Place("participant"), $"'{text}'", "an upper-case letter followed by letters or digits",
            "Use a pseudonym such as P01, never a name.");

    /// <summary>The problem that the study has no such player.</summary>
    public static Problem Unknown(ParticipantId participant) => new("participant-unknown", new Place("participant"), $"nobody has the code {participant}",
        "a player of the study", $"'swingstudy people list' shows them; 'swingstudy people add {participant} --alias NAME' adds one.");

    /// <summary>The problem that the pseudonym was that of a person who was erased.</summary>
    public static Problem Erased(ParticipantId participant) => new("person-erased", new Place("participant"), $"{participant} was the pseudonym of a person who was erased",
        "a pseudonym that nobody had", "Choose another one: what is left of an erased person must never be mistaken for somebody else's.");

    /// <summary>A player that the command line names, or why it cannot be that player.</summary>
    public static Outcome<ParticipantId> Known(OpenedStudy study, string text) => !Read(text).Succeeded(out var participant, out var problems)
        ? Outcome<ParticipantId>.Failed(problems)
        : study.Registry.Participant(participant) is null ? Unknown(participant) : participant;
}
