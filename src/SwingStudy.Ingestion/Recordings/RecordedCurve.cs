namespace SwingStudy.Ingestion.Recordings;

/// <summary>One channel of a recording.</summary>
/// <param name="Channel">Name of the channel.</param>
/// <param name="Unit">UCUM unit of the values.</param>
/// <param name="RateHz">Samples a second; NaN for a constant of one sample.</param>
/// <param name="Values">Samples; NaN where lost.</param>
internal sealed record RecordedCurve(string Channel, string Unit, double RateHz, double[] Values);
