using MathNet.Numerics.LinearAlgebra;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Between-case standardized mean difference by moments.</summary>
/// <remarks>
/// Model: no trend, the same change for every case, steady first-order autocorrelation φ within a case. δ = D̄/S: D̄ the mean over cases of the phase
/// difference, S² the variance across cases pooled over cells of values taken at the same point. φ = pooled lag-1 product over squares of the
/// residuals from case-by-phase means, plus the constant that removes its bias without autocorrelation. σ²(within) = SS/(N − tr(H·R(φ))),
/// ρ = max(0, 1 − σ²/S²), V = ρ + (1 − ρ)φ^|t−s| within a case, ν = df²/tr(AVAV), θ² = Σ var(Dᵢ)/m².
/// </remarks>
public static class BetweenCaseMoments
{
    /// <summary>Method word of <see cref="MultipleBaseline"/>.</summary>
    public const string MultipleBaselineMethod = "bc-smd-moments-multiple-baseline";

    /// <summary>Method word of <see cref="Reversal"/>.</summary>
    public const string ReversalMethod = "bc-smd-moments-reversal";

    /// <summary>Multiple baseline across cases: every case changes once, at its own time.</summary>
    /// <remarks>
    /// S² pools within cells of equal time and condition; lag products across the phase change count.
    /// Source: Hedges, Pustejovsky and Shadish (2013), Research Synthesis Methods 4:324–341.
    /// </remarks>
    /// <param name="cases">Case of each value.</param>
    /// <param name="times">Session number of each value, the same clock for all cases.</param>
    /// <param name="treated">Whether the value was taken with the intervention.</param>
    /// <param name="values">The values, canonical unit, all finite.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <returns>
    /// Undefined with fewer than two cases, a case without a phase, no cell with two cases, no scatter, or an autocorrelation outside (−1, 1).
    /// </returns>
    /// <exception cref="ArgumentException">Columns differ in length, a value is not finite, or a case has two values at one time.</exception>
    public static BetweenCaseEffect MultipleBaseline(
        ReadOnlySpan<int> cases, ReadOnlySpan<int> times, ReadOnlySpan<bool> treated, ReadOnlySpan<double> values, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var series = BetweenCaseSeries.Of(cases, new int[values.Length], treated, times, values);
        if (series.Lack() is { } lack)
            return BetweenCaseEffect.NotDefined(MultipleBaselineMethod, series, lack);
        var cells = new Dictionary<(int, bool), int>();
        var cellOf = new int[series.Count];
        for (var i = 0; i < cellOf.Length; i++)
        {
            var key = (series.TimeOf[i], series.Treated[i]);
            cellOf[i] = cells.TryGetValue(key, out var cell) ? cell : cells[key] = cells.Count;
        }

        return Estimated(MultipleBaselineMethod, series, cellOf, cells.Count, (i, j) => series.CaseOf[i] == series.CaseOf[j], series.TimeOf, confidence);
    }

    /// <summary>(AB)^k: every case goes k times without and with the intervention in turn.</summary>
    /// <remarks>
    /// S² pools over the points of a phase, counted from its start, that every case has; lag products stay within a phase; within-phase positions
    /// enter the within-case variance, session numbers the rest. Source: Hedges, Pustejovsky and Shadish (2012), Research Synthesis Methods 3:224–239.
    /// </remarks>
    /// <param name="cases">Case of each value.</param>
    /// <param name="pairs">Number of the phase pair (AB) of each value.</param>
    /// <param name="treated">Whether the value was taken with the intervention.</param>
    /// <param name="times">Session number of each value.</param>
    /// <param name="values">The values, canonical unit, all finite.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <inheritdoc cref="MultipleBaseline" path="/returns|/exception"/>
    public static BetweenCaseEffect Reversal(
        ReadOnlySpan<int> cases, ReadOnlySpan<int> pairs, ReadOnlySpan<bool> treated, ReadOnlySpan<int> times, ReadOnlySpan<double> values,
        double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var series = BetweenCaseSeries.Of(cases, pairs, treated, times, values);
        if (series.Lack() is { } lack)
            return BetweenCaseEffect.NotDefined(ReversalMethod, series, lack);
        var casesAt = new Dictionary<(int, bool, int), int>();
        for (var i = 0; i < series.Count; i++)
        {
            var key = (series.PairOf[i], series.Treated[i], series.PlaceInPhase[i]);
            casesAt[key] = casesAt.GetValueOrDefault(key) + 1;
        }

        var cells = casesAt.Where(at => at.Value == series.Cases).Select((at, number) => (at.Key, number)).ToDictionary();
        var cellOf = new int[series.Count];
        for (var i = 0; i < cellOf.Length; i++)
            cellOf[i] = cells.GetValueOrDefault((series.PairOf[i], series.Treated[i], series.PlaceInPhase[i]), -1);
        return Estimated(ReversalMethod, series, cellOf, cells.Count, series.SamePhase, series.PlaceInPhase, confidence);
    }

    private static BetweenCaseEffect Estimated(
        string method, BetweenCaseSeries series, int[] cellOf, int cells, Func<int, int, bool> lagCounts, int[] withinClock, double confidence)
    {
        var n = series.Count;
        var y = Vector<double>.Build.DenseOfArray(series.Values);
        var a = Contrast(cellOf, cells);
        var df = cellOf.Count(cell => cell >= 0) - cells;
        if (df < 1)
            return BetweenCaseEffect.NotDefined(method, series, "no two cases have a value at the same point of the same condition");
        var total = y * (a * y) / df;
        var phaseOf = PhaseOf(series, out var phases);
        var residual = Contrast(phaseOf, phases);
        var e = residual * y;
        var squares = e * e;
        if (!(total > 1e-28) || !(squares > 1e-28))
            return BetweenCaseEffect.NotDefined(method, series, "needs scatter between cases and within phases");

        double products = 0, expected = 0;
        for (var i = 1; i < n; i++)
        {
            if (!lagCounts(i, i - 1))
                continue;
            products += e[i] * e[i - 1];
            expected += residual[i, i - 1];
        }

        var phi = (products / squares) - (expected / residual.Trace());
        if (!(Math.Abs(phi) < 1))
            return BetweenCaseEffect.NotDefined(method, series, "the autocorrelation within cases leaves the range of a steady series");
        var traceHr = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                if (phaseOf[i] == phaseOf[j])
                    traceHr -= ((i == j ? -1 : 0) + residual[i, j]) * Math.Pow(phi, Math.Abs(withinClock[i] - withinClock[j]));
            }
        }

        var within = squares / (n - traceHr);
        var rho = Math.Max(0, 1 - (within / total));
        var v = Matrix<double>.Build.Dense(n, n, (i, j) => series.CaseOf[i] != series.CaseOf[j]
            ? 0
            : rho + ((1 - rho) * Math.Pow(phi, Math.Abs(series.TimeOf[i] - series.TimeOf[j]))));
        var av = a * v;
        var nu = (double)df * df / av.PointwiseMultiply(av.Transpose()).RowSums().Sum();
        var contrast = PhaseDifference(series);
        var change = contrast * y;
        var theta = Math.Sqrt(contrast * (v * contrast));
        var delta = change / Math.Sqrt(total);
        return Assemble(method, series, change, total, delta, theta, nu, useCorrected: true, confidence) with
        {
            Cells = cells,
            WithinVariance = within * series.Scale * series.Scale,
            Autocorrelation = phi,
            IntraclassCorrelation = rho,
        };
    }

    internal static BetweenCaseEffect Assemble(
        string method, BetweenCaseSeries series, double change, double total, double delta, double error, double nu, bool useCorrected, double confidence)
    {
        if (!(nu > 1))
            return BetweenCaseEffect.NotDefined(method, series, "the total variance has no more than one degree of freedom");
        var j = BetweenCaseEffect.Correction(nu);
        var g = j * delta;
        var inVariance = useCorrected ? g : delta;
        double? variance = nu > 2
            ? j * j * ((error * error * nu / (nu - 2)) + (inVariance * inVariance * ((nu / (nu - 2)) - (1 / (j * j)))))
            : null;
        double? se = variance is { } value ? Math.Sqrt(Math.Max(0, value)) : null;
        var z = Normal.Critical(confidence);
        return new BetweenCaseEffect
        {
            Count = series.Count,
            Cases = series.Cases,
            RawChange = change * series.Scale,
            TotalVariance = total * series.Scale * series.Scale,
            Unadjusted = delta,
            ChangeError = error,
            DegreesOfFreedom = nu,
            Variance = variance,
            Effect = new Estimate
            {
                Method = method,
                Value = g,
                StandardError = se,
                Interval = se is { } s ? new Interval(g - (z * s), g + (z * s), confidence) : null,
            },
        };
    }

    // The projection that takes off the mean of each cell; rows without a cell are left out altogether.
    private static Matrix<double> Contrast(int[] cellOf, int cells)
    {
        var sizes = new int[cells];
        foreach (var cell in cellOf)
        {
            if (cell >= 0)
                sizes[cell]++;
        }

        return Matrix<double>.Build.Dense(cellOf.Length, cellOf.Length, (i, j) =>
            cellOf[i] < 0 || cellOf[i] != cellOf[j] ? 0 : (i == j ? 1 : 0) - (1.0 / sizes[cellOf[i]]));
    }

    private static int[] PhaseOf(BetweenCaseSeries series, out int phases)
    {
        var numbers = new Dictionary<(int, int, bool), int>();
        var phaseOf = new int[series.Count];
        for (var i = 0; i < phaseOf.Length; i++)
        {
            var key = (series.CaseOf[i], series.PairOf[i], series.Treated[i]);
            phaseOf[i] = numbers.TryGetValue(key, out var number) ? number : numbers[key] = numbers.Count;
        }

        phases = numbers.Count;
        return phaseOf;
    }

    // Weights that turn the values into the mean over cases and pairs of (mean with minus mean without the intervention).
    private static Vector<double> PhaseDifference(BetweenCaseSeries series)
    {
        var phaseOf = PhaseOf(series, out var phases);
        var sizes = new int[phases];
        foreach (var phase in phaseOf)
            sizes[phase]++;
        return Vector<double>.Build.Dense(series.Count, i => (series.Treated[i] ? 2.0 : -2.0) / sizes[phaseOf[i]] / phases);
    }
}
