namespace SwingStudy.Domain.Protocols;

/// <summary>All draws of a study, oldest first. A later draw of a player replaces an earlier one, which stays on record.</summary>
/// <param name="Draws">The draws.</param>
public sealed record Schedule(IReadOnlyList<Draw> Draws)
{
    /// <summary>Nothing was drawn.</summary>
    public static Schedule None { get; } = new([]);

    /// <summary>Whether anything was drawn.</summary>
    public bool IsDrawn => Draws.Count > 0;

    /// <summary>The draw that holds for a player; null for whom nothing was drawn.</summary>
    public Draw? DrawOf(string participant) => Draws.LastOrDefault(draw => draw.Players.Any(player => player.Participant == participant));

    /// <summary>What holds for a player; null for whom nothing was drawn.</summary>
    public DrawnPlayer? Of(string participant) => DrawOf(participant)?.Players.First(player => player.Participant == participant);

    /// <summary>What holds for each drawn player, by code.</summary>
    public IReadOnlyList<DrawnPlayer> Players =>
        [.. Draws.SelectMany(draw => draw.Players.Select(player => player.Participant)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(code => Of(code)!)];
}
