using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.People;

/// <summary>What the study knows of a player: variables of the dictionary's participant level, as words.</summary>
/// <param name="Participant">Who.</param>
/// <param name="Values">Value by variable.</param>
public sealed record PersonFacts(ParticipantId Participant, IReadOnlyDictionary<string, string> Values)
{
    /// <summary>Name of the variable with the band of age.</summary>
    public const string AgeVariable = "age_band";

    /// <summary>Name of the variable with the hand after which the player's swing is named.</summary>
    public const string HandVariable = "handedness";

    /// <summary>Whether the player swings right-handed; null when nobody recorded it.</summary>
    public bool? IsRightHanded => Values.GetValueOrDefault(HandVariable) switch { "right" => true, "left" => false, _ => null };

    /// <summary>Band of age; null when nobody recorded it.</summary>
    public AgeBand? Age => AgeBand.Read(Values.GetValueOrDefault(AgeVariable));
}
