namespace SwingStudy.Reporting.Rows;

/// <summary>One channel of one swing over time.</summary>
/// <param name="SwingId">The swing.</param>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Channel">Channel.</param>
/// <param name="Unit">UCUM unit of the values.</param>
/// <param name="SampleRateHz">Samples a second.</param>
/// <param name="FirstTime">Time of the first sample from impact, s.</param>
/// <param name="Values">Samples; NaN where missing.</param>
public sealed record SwingCurveRow(string SwingId, string Participant, string Channel, string? Unit, double SampleRateHz, double FirstTime, IReadOnlyList<double> Values);
