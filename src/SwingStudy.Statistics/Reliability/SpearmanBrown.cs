using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The Spearman-Brown prophecy: reliability of a mean of k from that of one.</summary>
/// <remarks>Source: Spearman (1910) and Brown (1910), British Journal of Psychology 3:271–295, 296–322.</remarks>
public static class SpearmanBrown
{
    /// <summary>k r / (1 + (k − 1) r).</summary>
    /// <param name="single">Reliability of one trial.</param>
    /// <param name="k">Number of trials averaged, positive, may be a fraction.</param>
    /// <returns>Undefined when 1 + (k − 1) r is not positive.</returns>
    /// <exception cref="ArgumentException">The reliability is above 1 or not a number, or k is not positive.</exception>
    public static Estimate OfMean(double single, double k)
    {
        const string method = "spearman-brown";
        if (!(single <= 1 && double.IsFinite(single)) || !(k > 0 && double.IsFinite(k)))
            throw new ArgumentException($"Needs a reliability of at most 1 and k > 0; got {single} and {k}.");
        var divisor = 1 + ((k - 1) * single);
        return divisor > 0
            ? Estimate.Of(method, k * single / divisor)
            : Estimate.NotDefined(method, "the reliability is too far below zero to be stepped up");
    }

    /// <summary>How many trials the mean must take in to reach a target: t (1 − r)/(r (1 − t)), not rounded up.</summary>
    /// <param name="single">Reliability of one trial.</param>
    /// <param name="target">Reliability wanted, strictly between 0 and 1.</param>
    /// <returns>Undefined when the single reliability is not positive.</returns>
    /// <exception cref="ArgumentException">The reliability is above 1 or not a number, or the target is out of range.</exception>
    public static Estimate TrialsNeeded(double single, double target)
    {
        const string method = "spearman-brown-trials-needed";
        if (!(single <= 1 && double.IsFinite(single)) || !(target > 0 && target < 1))
            throw new ArgumentException($"Needs a reliability of at most 1 and a target between 0 and 1; got {single} and {target}.");
        return single > 0
            ? Estimate.Of(method, target * (1 - single) / (single * (1 - target)))
            : Estimate.NotDefined(method, "no number of trials helps when the reliability of one is not positive");
    }
}
