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
}
