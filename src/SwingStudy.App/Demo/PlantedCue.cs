namespace SwingStudy.App.Demo;

/// <summary>What the cue changes in a player's movement.</summary>
/// <param name="PushEarlier">By how much the vertical force comes earlier, s.</param>
/// <param name="PushMore">By how much its peak grows, in body weights.</param>
/// <param name="ReleaseLater">By how much later the wrists let go, s in a strong player's time.</param>
internal sealed record PlantedCue(double PushEarlier = 0, double PushMore = 0, double ReleaseLater = 0)
{
    /// <summary>The player hears it and swings as before.</summary>
    public static PlantedCue Nothing { get; } = new();
}
