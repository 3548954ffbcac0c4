using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The noise of one trial of a complete table, in the unit of the values or in percent.</summary>
/// <remarks>Sources: Weir (2005), J Strength Cond Res 19:231–240; Hopkins (2000), Sports Medicine 30:1–15.</remarks>
public static class MeasurementError
{
    /// <summary>Method word of <see cref="Typical"/>.</summary>
    public const string TypicalMethod = "typical-error";

    /// <summary>Method word of <see cref="Agreement"/>.</summary>
    public const string AgreementMethod = "sem-agreement";

    /// <summary>Typical error, also SEM (consistency) = √MSE; with two trials SD of the differences / √2.</summary>
    /// <returns>Unit of the values, 0 or more; interval by χ² with (n − 1)(k − 1) degrees of freedom.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Typical(TrialTable table, double confidence = 0.95) =>
        FromMeanSquare(TypicalMethod, table.ErrorMeanSquare, table.ErrorDegreesOfFreedom, confidence);

    /// <summary>SEM (agreement) = √MSW of the one-way analysis: changes of the trial means count as error.</summary>
    /// <returns>Unit of the values, 0 or more; interval by χ² with n (k − 1) degrees of freedom.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Agreement(TrialTable table, double confidence = 0.95) =>
        FromMeanSquare(AgreementMethod, table.WithinMeanSquare, table.WithinDegreesOfFreedom, confidence);

    /// <summary>SEM = SD of all values · √(1 − ICC): the other route, which moves with the spread of the subjects.</summary>
    /// <param name="table">The values.</param>
    /// <param name="icc">An intraclass correlation of the same table.</param>
    /// <returns>Unit of the values, method <c>sem-from-</c> and that of <paramref name="icc"/>. Undefined where the ICC is.</returns>
    public static Estimate FromIcc(TrialTable table, Estimate icc)
    {
        var method = "sem-from-" + icc.Method;
        return icc.Value is { } value
            ? Estimate.Of(method, table.TotalStandardDeviation * Math.Sqrt(Math.Max(0, 1 - value)))
            : Estimate.NotDefined(method, icc.Undefined!);
    }

    /// <summary>Smallest detectable change between two single trials: z √2 · SEM, z = 1.96 at 0.95.</summary>
    /// <param name="error">A standard error of measurement, with or without interval.</param>
    /// <param name="confidence">How sure a change must be, a share.</param>
    /// <returns>Unit of the values, method <c>smallest-detectable-change-</c> and that of <paramref name="error"/>.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate SmallestDetectableChange(Estimate error, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var method = "smallest-detectable-change-" + error.Method;
        if (error.Value is not { } value)
            return Estimate.NotDefined(method, error.Undefined!);
        var factor = Normal.Critical(confidence) * Math.Sqrt(2);
        Interval? interval = error.Interval is { } i ? i with { Low = factor * i.Low, High = factor * i.High } : null;
        return Estimate.Of(method, factor * value, interval: interval, degreesOfFreedom: error.DegreesOfFreedom);
    }

    /// <summary>Coefficient of variation: 100 · typical error / grand mean, percent.</summary>
    /// <returns>Percent. Undefined unless the grand mean is positive.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate CoefficientOfVariation(TrialTable table, double confidence = 0.95)
    {
        const string method = "coefficient-of-variation";
        if (!(table.GrandMean > 0))
            return Estimate.NotDefined(method, "a coefficient of variation needs a positive mean");
        var error = Typical(table, confidence);
        var factor = 100 / table.GrandMean;
        Interval? interval = error.Interval is { } i ? i with { Low = factor * i.Low, High = factor * i.High } : null;
        return Estimate.Of(method, factor * error.Value!.Value, interval: interval, degreesOfFreedom: error.DegreesOfFreedom);
    }

    /// <summary>Typical error in percent from logarithms: 100 (e^{√MSE of ln values} − 1).</summary>
    /// <param name="values">n·k positive values, subject after subject.</param>
    /// <param name="trials">k.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Percent. Undefined unless all values are positive.</returns>
    /// <exception cref="ArgumentException">The table is not complete, or the confidence is out of range.</exception>
    public static Estimate TypicalLogPercent(ReadOnlySpan<double> values, int trials, double confidence = 0.95)
    {
        const string method = "typical-error-log-percent";
        Finite.RequireConfidence(confidence);
        var logarithms = new double[values.Length];
        for (var i = 0; i < logarithms.Length; i++)
        {
            if (!(values[i] > 0))
                return Estimate.NotDefined(method, "logarithms need positive values");
            logarithms[i] = Math.Log(values[i]);
        }

        var error = Typical(TrialTable.Of(logarithms, trials), confidence);
        Interval? interval = error.Interval is { } limits ? limits with { Low = Percent(limits.Low), High = Percent(limits.High) } : null;
        return Estimate.Of(method, Percent(error.Value!.Value), interval: interval, degreesOfFreedom: error.DegreesOfFreedom);

        static double Percent(double x) => 100 * (Math.Exp(x) - 1);
    }

    /// <summary>100 √(mean over subjects of (s_i / mean_i)²): within-subject coefficient of variation, root mean square.</summary>
    /// <param name="values">n·k values, subject after subject.</param>
    /// <param name="trials">k.</param>
    /// <returns>Percent. Undefined unless every subject's mean is positive.</returns>
    /// <exception cref="ArgumentException">The values do not fill at least 2 rows of at least 2 columns, or a value is not finite.</exception>
    public static Estimate WithinSubjectVariation(ReadOnlySpan<double> values, int trials)
    {
        const string method = "cv-within-subject-rms";
        var table = TrialTable.Of(values, trials);
        var sum = 0.0;
        for (var subject = 0; subject < table.Subjects; subject++)
        {
            var summary = Summary.Of(values.Slice(subject * trials, trials));
            if (!(summary.Mean > 0))
                return Estimate.NotDefined(method, "a coefficient of variation needs positive means");
            var ratio = summary.StandardDeviation!.Value / summary.Mean.Value;
            sum += ratio * ratio;
        }

        return Estimate.Of(method, 100 * Math.Sqrt(sum / table.Subjects));
    }

    /// <summary>√mean square with its χ² interval.</summary>
    internal static Estimate FromMeanSquare(string method, double meanSquare, double df, double confidence)
    {
        Finite.RequireConfidence(confidence);
        var tail = (1 - confidence) / 2;
        var interval = new Interval(
            Math.Sqrt(meanSquare * df / ChiSquare.Quantile(1 - tail, df)), Math.Sqrt(meanSquare * df / ChiSquare.Quantile(tail, df)), confidence);
        return Estimate.Of(method, Math.Sqrt(meanSquare), interval: interval, degreesOfFreedom: df);
    }
}
