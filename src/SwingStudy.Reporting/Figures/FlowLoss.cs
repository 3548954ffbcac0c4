namespace SwingStudy.Reporting.Figures;

/// <summary>What leaves at a step.</summary>
/// <param name="Count">How many.</param>
/// <param name="Reason">Why.</param>
internal sealed record FlowLoss(long Count, string Reason);
