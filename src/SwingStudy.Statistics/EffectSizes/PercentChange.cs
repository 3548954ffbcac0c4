using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Change of the mean in percent of the first mean: 100 (mean(after)/mean(before) − 1).</summary>
/// <remarks>Interval and p come from the log response ratio, back-transformed. Source: Hedges, Gurevitch and Curtis (1999), Ecology 80:1150–1156.</remarks>
public static class PercentChange
{
    /// <summary>Method word of <see cref="Independent"/>.</summary>
    public const string IndependentMethod = "percent-change";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "percent-change-paired";

    /// <summary>Method word of <see cref="MeanOfIndividual"/>.</summary>
    public const string IndividualMethod = "percent-change-mean-of-individual";

    /// <summary>Two independent conditions.</summary>
    /// <returns>Undefined with an empty condition or a mean that is not positive.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Independent(IndependentContrast contrast, double confidence = 0.95) =>
        FromLogarithm(IndependentMethod, LogResponseRatio.Independent(contrast, confidence));

    /// <summary>Paired conditions: change of the mean, not the mean of the changes.</summary>
    /// <returns>Undefined without pairs or with a mean that is not positive.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Paired(PairedContrast contrast, double confidence = 0.95) =>
        FromLogarithm(PairedMethod, LogResponseRatio.Paired(contrast, confidence));

    /// <summary>Mean over pairs of 100 (after/before − 1), with a t interval.</summary>
    /// <returns>Undefined without pairs or when a first value is not positive.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite or the confidence is out of range.</exception>
    public static Estimate MeanOfIndividual(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence = 0.95)
    {
        Finite.Require(before, nameof(before));
        Finite.Require(after, nameof(after));
        if (before.Length != after.Length)
            throw new ArgumentException($"Pairs need equal lengths; got {before.Length} before and {after.Length} after.", nameof(after));
        var changes = new double[before.Length];
        for (var i = 0; i < changes.Length; i++)
        {
            if (!(before[i] > 0))
                return Estimate.NotDefined(IndividualMethod, "a percent change needs positive values before");
            changes[i] = 100 * ((after[i] / before[i]) - 1);
            if (!(Math.Abs(changes[i]) <= Finite.Largest))
                return Estimate.NotDefined(IndividualMethod, "a value before is too near zero for a percent change");
        }

        return MeanDifference.Paired(PairedContrast.Of(new double[changes.Length], changes), confidence) with { Method = IndividualMethod };
    }

    /// <summary>Back-transforms an estimate on the log scale: 100 (e^x − 1), SE by the delta method.</summary>
    internal static Estimate FromLogarithm(string method, Estimate logarithm)
    {
        if (logarithm.Value is not { } value)
            return Estimate.NotDefined(method, logarithm.Undefined!);
        Interval? interval = logarithm.Interval is { } limits ? new Interval(Percent(limits.Low), Percent(limits.High), limits.Level) : null;
        return Estimate.Of(method, Percent(value), 100 * Math.Exp(value) * logarithm.StandardError, interval, logarithm.P);

        static double Percent(double x) => 100 * (Math.Exp(x) - 1);
    }
}
