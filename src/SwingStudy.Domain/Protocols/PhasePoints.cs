namespace SwingStudy.Domain.Protocols;

/// <summary>How many points one phase of one player has. A point is the mean of one session.</summary>
/// <param name="Participant">Player.</param>
/// <param name="Phase">Phase.</param>
/// <param name="Role">What the phase is for; follow-up and transfer are no part of the rating.</param>
/// <param name="Points">Sessions with a value that counts.</param>
public sealed record PhasePoints(string Participant, string Phase, PhaseRole Role, int Points);
