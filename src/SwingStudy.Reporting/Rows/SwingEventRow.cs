namespace SwingStudy.Reporting.Rows;

/// <summary>One event of one swing.</summary>
/// <param name="SwingId">The swing.</param>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Event">Its name.</param>
/// <param name="Time">Seconds from impact.</param>
public sealed record SwingEventRow(string SwingId, string Participant, string Event, double Time);
