namespace SwingStudy.Domain.Curves;

/// <summary>The channels of processed curves of a swing, as the <c>channel</c> column of <c>swing_curves</c> names them, in words that a coach uses.</summary>
public static class SwingChannels
{
    /// <summary>Vertical force under both feet, in body weights.</summary>
    public const string VerticalForce = "total_force_y";

    private static readonly Dictionary<string, string> Titles = new(All(), StringComparer.Ordinal);

    /// <summary>Names of all channels.</summary>
    public static IReadOnlyCollection<string> Names => Titles.Keys;

    /// <summary>What a person calls a channel, in sentence case; a channel of a device by its own title, an unknown one by its name in words.</summary>
    public static string TitleOf(string name)
    {
        var title = Titles.GetValueOrDefault(name) ?? Channels.Find(name)?.Title ?? name.Replace('_', ' ');
        return title.Length == 0 ? title : char.ToUpperInvariant(title[0]) + title[1..];
    }

    private static IEnumerable<KeyValuePair<string, string>> All()
    {
        foreach (var (name, feet) in new[] { ("total", "both feet"), ("lead", "lead foot"), ("trail", "trail foot") })
        {
            yield return new($"{name}_force_y", $"Vertical force, {feet}");
            yield return new($"{name}_force_x", $"Force towards the target, {feet}");
            yield return new($"{name}_force_toe", $"Force towards the toes, {feet}");
            yield return new($"{name}_free_moment", $"Twist on the ground, {feet}");
        }

        yield return new("pivot_moment", "Turning moment of the ground on the player");
        yield return new("lead_share", "Lead foot's share of the vertical force");
        yield return new("cop_along", "Centre of pressure towards the target");
        yield return new("cop_toe", "Centre of pressure towards the toes");
        yield return new("grip_speed", "Speed of the hands");
        yield return new("club_head_speed", "Club head speed");
        yield return new("forearm_shaft_angle", "Angle between forearm and shaft");
        yield return new("pelvis_height", "Height of the pelvis");
        yield return new("pelvis_along", "Pelvis towards the target");
        yield return new("pelvis_turn", "Turn of the pelvis");
        yield return new("trunk_turn", "Turn of the trunk");
        yield return new("separation", "Turn of the trunk against the pelvis");
    }
}
