namespace SwingStudy.Domain.Protocols;

/// <summary>How many players the study plans for.</summary>
/// <param name="Count">Number of players.</param>
/// <param name="Why">Reason.</param>
public sealed record PlannedPlayers(int Count, string Why);
