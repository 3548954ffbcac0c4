namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>Impact on the time of one recording.</summary>
/// <param name="TimeS">From the first sample.</param>
/// <param name="Method">How it was found.</param>
/// <param name="Confidence">0 to 1.</param>
internal sealed record Impact(double TimeS, string Method, double Confidence);
