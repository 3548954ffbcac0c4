namespace SwingStudy.Pipeline.Screen;

/// <summary>What a rule found.</summary>
/// <param name="Swing">Position of the swing among those screened.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Detail">What was found, with the value.</param>
internal sealed record RuleHit(int Swing, string Variable, string Detail);
