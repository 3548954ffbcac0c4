namespace SwingStudy.Reporting.Rows;

/// <summary>Something that happened to a player.</summary>
/// <param name="Participant">The player.</param>
/// <param name="Text">What, in one sentence without names.</param>
public sealed record ReportedIncident(string Participant, string Text);
