namespace SwingStudy.Pipeline.Calculate;

/// <summary>Which columns of a tidy file play which part in a statistic.</summary>
/// <param name="Value">Column with the observed numbers.</param>
/// <param name="Condition">Column with the condition, such as the phase; null when not needed.</param>
/// <param name="Subject">Column with the subject.</param>
/// <param name="Session">Column with the session within subject.</param>
/// <param name="Predictor">Column with time or another predictor.</param>
/// <param name="Variance">Column with the sampling variance of the value.</param>
/// <param name="Keep">Conditions to keep, the first being 'before'; empty: all, in order of first appearance.</param>
public sealed record TidyColumns(
    string Value,
    string? Condition,
    string? Subject,
    string? Session,
    string? Predictor,
    string? Variance,
    IReadOnlyList<string> Keep);
