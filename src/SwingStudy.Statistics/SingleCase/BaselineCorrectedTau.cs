using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Kendall's tau-b of values against phase after the Theil–Sen line of the baseline has been taken off the whole series.</summary>
/// <remarks>
/// Source: Tarlow (2017), Behavior Modification 41:427–467. The author corrects only when the baseline trend is significant: both values are given,
/// and <see cref="Chosen"/> follows that rule.
/// </remarks>
public sealed record BaselineCorrectedTau
{
    /// <summary>Method word of <see cref="Corrected"/>.</summary>
    public const string Method = "baseline-corrected-tau";

    /// <summary>Trend of the baseline alone.</summary>
    public required MannKendallTrend BaselineTrend { get; init; }

    /// <summary>The line of the baseline, times 1, 2, 3, ….</summary>
    public required TheilSenLine BaselineLine { get; init; }

    /// <summary>Values minus the baseline line, phase A then phase B; empty when the line is undefined.</summary>
    public required IReadOnlyList<double> Residuals { get; init; }

    /// <summary>Tau-b of the values as they are, positive when values rise.</summary>
    public required Estimate Uncorrected { get; init; }

    /// <summary>Tau-b of the residuals, positive when they rise.</summary>
    public required Estimate Corrected { get; init; }

    /// <summary>S(AB)/(mn) of the residuals; null when undefined.</summary>
    public double? CorrectedTauA { get; init; }

    /// <summary>The corrected value when the baseline trend is significant at the level given, else the uncorrected one.</summary>
    public required Estimate Chosen { get; init; }

    /// <summary>Baseline-corrected tau of one series.</summary>
    /// <param name="phaseA">Baseline in order of time, equally spaced, all finite.</param>
    /// <param name="phaseB">Values after the change in order of time, all finite.</param>
    /// <param name="trendAlpha">Two-sided level of the baseline trend test (with continuity correction) that decides the choice.</param>
    /// <returns>Undefined when a phase is empty or all values are equal; the corrected value also with fewer than two baseline values.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static BaselineCorrectedTau Of(ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, double trendAlpha = 0.05)
    {
        Finite.Require(phaseA, nameof(phaseA));
        Finite.Require(phaseB, nameof(phaseB));
        var times = new double[phaseA.Length];
        for (var i = 0; i < times.Length; i++)
            times[i] = i + 1;
        var trend = MannKendallTrend.Of(times, phaseA);
        var line = TheilSenLine.Fit(times, phaseA);
        var uncorrected = phaseA.IsEmpty || phaseB.IsEmpty
            ? Estimate.NotDefined(TauU.TauBAgainstPhaseMethod, PhaseOverlap.EmptyPhase(phaseA, phaseB))
            : TauU.TauBAgainst(phaseA, phaseB, 1);
        double[] residuals = [];
        double? tauA = null;
        var corrected = Estimate.NotDefined(Method, "needs at least two baseline values and one after the change");
        if (line.Slope.Value is { } slope && line.Intercept.Value is { } intercept && !phaseB.IsEmpty)
        {
            residuals = [.. phaseA, .. phaseB];
            var largest = 0.0;
            for (var i = 0; i < residuals.Length; i++)
            {
                largest = Math.Max(largest, Math.Max(Math.Abs(residuals[i]), Math.Abs(slope * (i + 1))));
                residuals[i] -= intercept + (slope * (i + 1));
            }

            // Residuals that are equal in exact arithmetic must tie in ranking too.
            DecimalGrid.Snap(residuals, largest, digits: 13);
            var a = residuals.AsSpan(0, phaseA.Length);
            var b = residuals.AsSpan(phaseA.Length);
            tauA = (double)PairCounts.Of(a, b, Improvement.Increase).S / ((long)a.Length * b.Length);
            corrected = TauU.TauBAgainst(a, b, 1) with { Method = Method };
        }

        return new BaselineCorrectedTau
        {
            BaselineTrend = trend,
            BaselineLine = line,
            Residuals = residuals,
            Uncorrected = uncorrected,
            Corrected = corrected,
            CorrectedTauA = tauA,
            Chosen = trend.PWithContinuity is { } p && p < trendAlpha ? corrected : uncorrected,
        };
    }
}
