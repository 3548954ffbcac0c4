using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>The correlation of two variables within subjects, common to all of them.</summary>
/// <remarks>
/// Pearson's r of deviations from subject means, with N − n − 1 degrees of freedom; interval by Fisher's z with SE 1/√(df − 1).
/// Sources: Bland and Altman (1995), BMJ 310:446; Bakdash and Marusich (2017), Frontiers in Psychology 8:456.
/// </remarks>
public static class RepeatedMeasuresCorrelation
{
    /// <summary>Method word.</summary>
    public const string Method = "repeated-measures-correlation";

    /// <summary>Correlates x and y within subjects.</summary>
    /// <param name="x">First variable.</param>
    /// <param name="y">Second variable, same length.</param>
    /// <param name="subjects">Subject of each pair.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>From −1 to 1. Undefined without degrees of freedom or when a variable never varies within subjects.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the confidence is out of range.</exception>
    public static Estimate Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<int> subjects, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        Finite.Require(x, nameof(x));
        Finite.Require(y, nameof(y));
        if (x.Length != y.Length || x.Length != subjects.Length)
            throw new ArgumentException($"Columns need equal lengths; got {x.Length}, {y.Length} and {subjects.Length}.", nameof(y));
        var (dx, dy) = (Deviations(x, subjects), Deviations(y, subjects));
        var df = x.Length - subjects.ToArray().Distinct().Count() - 1;
        if (df < 1)
            return Estimate.NotDefined(Method, "needs at least two more pairs than subjects");
        double sxy = 0, sxx = 0, syy = 0;
        for (var i = 0; i < dx.Length; i++)
            (sxy, sxx, syy) = (sxy + (dx[i] * dy[i]), sxx + (dx[i] * dx[i]), syy + (dy[i] * dy[i]));
        var scale = Math.Sqrt(sxx) * Math.Sqrt(syy);
        if (!(scale > 0))
            return Estimate.NotDefined(Method, "a variable never varies within subjects");
        var r = Math.Clamp(sxy / scale, -1, 1);
        if (Math.Abs(r) == 1)
            return Estimate.Of(Method, r, p: 0, degreesOfFreedom: df);
        var half = df > 1 ? Normal.Critical(confidence) / Math.Sqrt(df - 1) : double.NaN;
        var z = Math.Atanh(r);
        var t = r * Math.Sqrt(df / (1 - (r * r)));
        return Estimate.Of(
            Method, r, interval: new Interval(Math.Tanh(z - half), Math.Tanh(z + half), confidence), p: StudentT.TwoSided(t, df), degreesOfFreedom: df);
    }

    private static double[] Deviations(ReadOnlySpan<double> values, ReadOnlySpan<int> subjects)
    {
        var sums = new Dictionary<int, (CompensatedSum Sum, int Count)>();
        var origins = new Dictionary<int, double>();
        for (var i = 0; i < values.Length; i++)
        {
            origins.TryAdd(subjects[i], values[i]);
            var entry = sums.GetValueOrDefault(subjects[i]);
            entry.Sum.Add(values[i] - origins[subjects[i]]);
            sums[subjects[i]] = (entry.Sum, entry.Count + 1);
        }

        var deviations = new double[values.Length];
        for (var i = 0; i < deviations.Length; i++)
            deviations[i] = values[i] - origins[subjects[i]] - (sums[subjects[i]].Sum.Value / sums[subjects[i]].Count);
        return deviations;
    }
}
