namespace SwingStudy.Pipeline.Safety;

/// <summary>Swings of a player, those at maximum intent apart.</summary>
/// <param name="Participant">The player.</param>
/// <param name="Sessions">Sessions.</param>
/// <param name="Swings">Swings recorded, practice swings included.</param>
/// <param name="AtMaximum">Of these, meant as fast as the player can.</param>
public sealed record SwingCounts(string Participant, int Sessions, int Swings, int AtMaximum);
