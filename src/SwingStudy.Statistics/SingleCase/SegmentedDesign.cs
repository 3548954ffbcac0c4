using MathNet.Numerics.LinearAlgebra;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>The regressors of an interrupted time series: intercept, time, level change, slope change.</summary>
/// <remarks>
/// t = 1..n; level = 1 from the first value after the change; slope change = t − n(before) − 1 from then on, 0 before, so that the level change is
/// the jump at the first value after the change. Source: Wagner, Soumerai, Zhang and Ross-Degnan (2002), Journal of Clinical Pharmacy and
/// Therapeutics 27:299–309; coding after Huitema and McKean (2000), Educational and Psychological Measurement 60:38–58.
/// </remarks>
internal sealed class SegmentedDesign
{
    /// <summary>Number of coefficients.</summary>
    public const int Coefficients = 4;

    /// <summary>The design of a series, or the reason why it does not identify its four coefficients.</summary>
    /// <exception cref="ArgumentException">A value is not finite or <paramref name="before"/> is negative or beyond the series.</exception>
    public static (SegmentedDesign? Design, string? Reason) Of(ReadOnlySpan<double> values, int before)
    {
        Finite.Require(values, nameof(values));
        if (before < 0 || before > values.Length)
            throw new ArgumentException($"The change lies after {before} of {values.Length} values.", nameof(before));
        if (before < 2 || values.Length - before < 2)
            return (null, $"needs at least two values before and after the change, got {before} and {values.Length - before}");
        if (values.Length <= Coefficients)
            return (null, $"needs more than four values, got {values.Length}");

        // A common offset and scale go first, so that neither costs digits; coefficients are turned back afterwards.
        var origin = values[0];
        var scale = 0.0;
        foreach (var y in values)
            scale = Math.Max(scale, Math.Abs(y - origin));
        if (scale == 0)
            return (null, "needs values that are not all equal");
        if (!double.IsFinite(scale) || !double.IsFinite(1 / scale))
            return (null, "the spread of the values is beyond the range of numbers");
        return (new SegmentedDesign(values, before, origin, scale), null);
    }

    private SegmentedDesign(ReadOnlySpan<double> values, int before, double origin, double scale)
    {
        Before = before;
        Origin = origin;
        Scale = scale;
        X = Matrix<double>.Build.Dense(values.Length, Coefficients);
        Y = Vector<double>.Build.Dense(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            Y[i] = (values[i] - origin) / scale;
            X[i, 0] = 1;
            X[i, 1] = i + 1;
            if (i >= before)
            {
                X[i, 2] = 1;
                X[i, 3] = i - before;
            }
        }
    }

    public int Before { get; }

    /// <summary>What was taken off every value.</summary>
    public double Origin { get; }

    /// <summary>What every value was divided by.</summary>
    public double Scale { get; }

    public Matrix<double> X { get; }

    /// <summary>Values minus <see cref="Origin"/>, divided by <see cref="Scale"/>.</summary>
    public Vector<double> Y { get; }

    public int Count => Y.Count;

    public int ResidualDegreesOfFreedom => Count - Coefficients;
}
