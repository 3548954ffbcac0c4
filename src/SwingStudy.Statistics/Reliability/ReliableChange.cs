using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The reliable change index: one person's change in standard errors of a difference.</summary>
/// <remarks>
/// SEM = s √(1 − r), s_diff = √2 SEM, RCI = (post − pre)/s_diff; reliable when |RCI| exceeds z.
/// Source: Jacobson and Truax (1991), Journal of Consulting and Clinical Psychology 59:12–19.
/// </remarks>
/// <param name="StandardErrorOfMeasurement">SEM, unit of the values.</param>
/// <param name="StandardErrorOfDifference">√2 SEM.</param>
/// <param name="Index">RCI; null when the measure has no error.</param>
/// <param name="IsReliable">Whether the change exceeds what error alone gives at the confidence.</param>
/// <param name="SmallestReliableChange">z √2 SEM.</param>
public sealed record ReliableChange(
    double StandardErrorOfMeasurement, double StandardErrorOfDifference, double? Index, bool IsReliable, double SmallestReliableChange)
{
    /// <summary>Judges one change.</summary>
    /// <param name="before">Score before.</param>
    /// <param name="after">Score after.</param>
    /// <param name="standardDeviation">Spread of the reference group, 0 or more.</param>
    /// <param name="reliability">Reliability of the score, from 0 to 1.</param>
    /// <param name="confidence">How sure, a share.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static ReliableChange Of(double before, double after, double standardDeviation, double reliability, double confidence = 0.95)
    {
        Finite.Require([before, after, standardDeviation, reliability], nameof(before));
        Finite.RequireConfidence(confidence);
        if (standardDeviation < 0 || reliability is < 0 or > 1)
            throw new ArgumentException($"Needs a standard deviation of 0 or more and a reliability from 0 to 1; got {standardDeviation} and {reliability}.");
        var error = standardDeviation * Math.Sqrt(1 - reliability);
        var difference = Math.Sqrt(2) * error;
        var threshold = Normal.Critical(confidence) * difference;
        var change = after - before;
        return new ReliableChange(error, difference, difference > 0 ? change / difference : null, Math.Abs(change) > threshold, threshold);
    }
}
