namespace SwingStudy.Motion.Events;

/// <summary>Places of contact for one set of scatters; the origin taken off.</summary>
/// <param name="BallScatter">Scatter of the balls.</param>
/// <param name="LogLikelihood">Restricted likelihood of the evidence, but for a constant.</param>
/// <param name="Place">Common place.</param>
/// <param name="PlaceVariance">Its variance.</param>
/// <param name="Swings">Place of contact in each swing with its variance.</param>
internal sealed record PlaceSolution(double BallScatter, double LogLikelihood, double Place, double PlaceVariance, (double Place, double Variance)[] Swings);
