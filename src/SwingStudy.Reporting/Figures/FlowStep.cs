namespace SwingStudy.Reporting.Figures;

/// <summary>One step of the records' way.</summary>
/// <param name="Word">What is counted.</param>
/// <param name="Count">How many.</param>
/// <param name="Leaving">What does not go on to the next step.</param>
internal sealed record FlowStep(string Word, long Count, IReadOnlyList<FlowLoss> Leaving);
