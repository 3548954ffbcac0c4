using NodaTime;

namespace SwingStudy.App.Studies;

/// <summary>One session to come.</summary>
/// <param name="Participant">Player.</param>
/// <param name="Number">Counted from 1 for each player.</param>
/// <param name="Day">Day; null where no first day was given.</param>
/// <param name="Phase">Phase.</param>
/// <param name="Cue">What the player is told; null: nothing.</param>
/// <param name="Swings">Swings that count it needs; null where the protocol no longer has the phase.</param>
internal sealed record CalendarSession(string Participant, int Number, LocalDate? Day, string Phase, string? Cue, int? Swings);
