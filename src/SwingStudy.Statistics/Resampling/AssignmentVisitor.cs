namespace SwingStudy.Statistics.Resampling;

/// <summary>Gets one assignment: false = condition A, true = condition B, one flag an occasion.</summary>
/// <param name="assignment">Lent for the call only.</param>
public delegate void AssignmentVisitor(ReadOnlySpan<bool> assignment);
