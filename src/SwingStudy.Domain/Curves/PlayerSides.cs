namespace SwingStudy.Domain.Curves;

/// <summary>Names with left and right, and what they are for a player: the lead side is nearer the target.</summary>
public static class PlayerSides
{
    /// <summary>Whether a name needs the player's handedness: one of its words is left or right.</summary>
    public static bool NeedsHandedness(string name) =>
        (name.Contains("left", StringComparison.Ordinal) || name.Contains("right", StringComparison.Ordinal)) && name.Split('_').Any(word => word is "left" or "right");

    /// <summary>The name with lead and trail. The left side of a player who swings right-handed leads.</summary>
    public static string Of(string name, bool isRightHanded) => NeedsHandedness(name)
        ? string.Join('_', name.Split('_').Select(word => word switch
        {
            "left" => isRightHanded ? "lead" : "trail",
            "right" => isRightHanded ? "trail" : "lead",
            _ => word,
        }))
        : name;
}
