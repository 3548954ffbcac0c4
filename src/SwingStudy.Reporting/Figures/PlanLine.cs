namespace SwingStudy.Reporting.Figures;

/// <summary>How the smallest detectable change falls with the swings of a session, for one number of sessions.</summary>
/// <param name="Sessions">Sessions of each phase.</param>
/// <param name="Points">Swings of a session and smallest detectable change, canonical unit, by swings.</param>
public sealed record PlanLine(int Sessions, IReadOnlyList<(int Swings, double Detectable)> Points);
