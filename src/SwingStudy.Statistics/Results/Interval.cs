namespace SwingStudy.Statistics.Results;

/// <summary>A confidence, credible or prediction interval.</summary>
/// <param name="Low">Lower limit; negative infinity when the interval is open below.</param>
/// <param name="High">Upper limit, never below <paramref name="Low"/>; positive infinity when open above.</param>
/// <param name="Level">Confidence level as a share, such as 0.95.</param>
public readonly record struct Interval(double Low, double High, double Level)
{
    /// <summary>Whether <paramref name="value"/> lies in the closed interval.</summary>
    public bool Contains(double value) => Low <= value && value <= High;

    /// <summary>Half of the distance between the limits.</summary>
    public double HalfWidth => (High - Low) / 2;
}
