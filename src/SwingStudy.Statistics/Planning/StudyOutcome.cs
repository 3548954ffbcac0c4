namespace SwingStudy.Statistics.Planning;

/// <summary>What one simulated study showed.</summary>
/// <param name="IsSignificant">Whether p is at or below alpha.</param>
/// <param name="Estimate">The estimated change.</param>
/// <param name="HalfWidth">Half-width of its interval; NaN where the design gives none.</param>
internal readonly record struct StudyOutcome(bool IsSignificant, double Estimate, double HalfWidth);
