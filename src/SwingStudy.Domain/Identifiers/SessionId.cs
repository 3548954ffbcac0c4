using System.Globalization;

namespace SwingStudy.Domain.Identifiers;

/// <summary>One occasion of one player: pseudonym, local calendar day, and ordinal within that day.</summary>
/// <remarks>A corrected start time keeps the identifier; a session moved to another day is another session.</remarks>
/// <param name="Participant">The player.</param>
/// <param name="Day">Calendar day in the study's zone.</param>
/// <param name="Ordinal">1 for the first session of that player on that day.</param>
public readonly record struct SessionId(ParticipantId Participant, DateOnly Day, int Ordinal)
{
    /// <summary>"P01-20260907-1".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Participant}-{Day:yyyyMMdd}-{Ordinal}");
}
