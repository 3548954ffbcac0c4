namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>Drift of one clock against another, as it was seen elsewhere.</summary>
/// <param name="Drift">Change of the offset over elapsed device time: 1e-6 is one part in a million.</param>
/// <param name="Scatter">Standard deviation with which it holds here.</param>
internal sealed record ClockDrift(double Drift, double Scatter);
