using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The six intraclass correlations of Shrout and Fleiss: the name says model and unit.</summary>
/// <remarks>
/// First figure: 1 = trials are interchangeable and differ by subject; 2 = trials are a random sample, agreement; 3 = trials are fixed,
/// consistency. Second: 1 = of one trial; k = of the mean of k trials. An ICC depends on the spread of the subjects: never use it alone.
/// Estimates and limits are not cut at zero. Intervals: McGraw and Wong (1996), Psychological Methods 1:30–46.
/// Source: Shrout and Fleiss (1979), Psychological Bulletin 86:420–428.
/// </remarks>
public static class IntraclassCorrelation
{
    /// <summary>ICC(1,1) = (MSB − MSW)/(MSB + (k − 1) MSW).</summary>
    /// <returns>At most 1. Undefined when nothing varies. P is of F = MSB/MSW.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc11(TrialTable table, double confidence = 0.95)
    {
        var (b, w, k) = (table.SubjectMeanSquare, table.WithinMeanSquare, table.Trials);
        return Build("icc-1-1", table, confidence, (b - w) / (b + ((k - 1) * w)), OneWay(table), limits => Single(limits, k));
    }

    /// <summary>ICC(1,k) = (MSB − MSW)/MSB.</summary>
    /// <returns>At most 1. Undefined when the subjects do not differ. P is of F = MSB/MSW.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc1k(TrialTable table, double confidence = 0.95)
    {
        var (b, w) = (table.SubjectMeanSquare, table.WithinMeanSquare);
        return Build("icc-1-k", table, confidence, (b - w) / b, OneWay(table), Mean);
    }

    /// <summary>ICC(2,1) = (MSR − MSE)/(MSR + (k − 1) MSE + k (MSC − MSE)/n).</summary>
    /// <returns>At most 1. Undefined when nothing varies. P is of F = MSR/MSE.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc21(TrialTable table, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (r, c, e) = (table.SubjectMeanSquare, table.TrialMeanSquare, table.ErrorMeanSquare);
        var (n, k) = (table.Subjects, table.Trials);
        var icc = (r - e) / (r + ((k - 1) * e) + (k * (c - e) / n));
        return Finish("icc-2-1", icc, AgreementInterval(table, icc, confidence), TwoWay(table));
    }

    /// <summary>ICC(2,k) = (MSR − MSE)/(MSR + (MSC − MSE)/n); limits are those of ICC(2,1) stepped up by Spearman and Brown.</summary>
    /// <returns>At most 1. Undefined when nothing varies. P is of F = MSR/MSE.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc2k(TrialTable table, double confidence = 0.95)
    {
        var single = Icc21(table, confidence);
        var (r, c, e) = (table.SubjectMeanSquare, table.TrialMeanSquare, table.ErrorMeanSquare);
        Interval? interval = single.Interval is { } i && StepUp(i.Low, table.Trials) is { } low && StepUp(i.High, table.Trials) is { } high
            ? new Interval(low, high, i.Level)
            : null;
        return Finish("icc-2-k", (r - e) / (r + ((c - e) / table.Subjects)), interval, TwoWay(table));
    }

    /// <summary>ICC(3,1) = (MSR − MSE)/(MSR + (k − 1) MSE).</summary>
    /// <returns>At most 1. Undefined when nothing varies but the trial means. P is of F = MSR/MSE.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc31(TrialTable table, double confidence = 0.95)
    {
        var (r, e, k) = (table.SubjectMeanSquare, table.ErrorMeanSquare, table.Trials);
        return Build("icc-3-1", table, confidence, (r - e) / (r + ((k - 1) * e)), TwoWay(table), limits => Single(limits, k));
    }

    /// <summary>ICC(3,k) = (MSR − MSE)/MSR.</summary>
    /// <returns>At most 1. Undefined when the subjects do not differ. P is of F = MSR/MSE.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Icc3k(TrialTable table, double confidence = 0.95)
    {
        var (r, e) = (table.SubjectMeanSquare, table.ErrorMeanSquare);
        return Build("icc-3-k", table, confidence, (r - e) / r, TwoWay(table), Mean);
    }

    /// <summary>F = MSB/MSW of the one-way analysis, with its degrees of freedom.</summary>
    public static FTest OneWay(TrialTable table) =>
        FTest.Of(table.SubjectMeanSquare, table.WithinMeanSquare, table.SubjectDegreesOfFreedom, table.WithinDegreesOfFreedom);

    /// <summary>F = MSR/MSE of the two-way analysis, with its degrees of freedom.</summary>
    public static FTest TwoWay(TrialTable table) =>
        FTest.Of(table.SubjectMeanSquare, table.ErrorMeanSquare, table.SubjectDegreesOfFreedom, table.ErrorDegreesOfFreedom);

    /// <summary>Satterthwaite's degrees of freedom behind the interval of ICC(2,1); null when nothing but subjects varies.</summary>
    public static double? AgreementDegreesOfFreedom(TrialTable table)
    {
        var icc = Icc21(table).Value;
        return icc is { } value ? AgreementDegreesOfFreedom(table, value) : null;
    }

    private static double? AgreementDegreesOfFreedom(TrialTable table, double icc)
    {
        var (n, k) = ((double)table.Subjects, (double)table.Trials);
        if (!(icc < 1))
            return null;
        var a = k * icc / (n * (1 - icc)) * table.TrialMeanSquare;
        var b = (1 + (k * icc * (n - 1) / (n * (1 - icc)))) * table.ErrorMeanSquare;
        var df = (a + b) * (a + b) / ((a * a / (k - 1)) + (b * b / ((n - 1) * (k - 1))));
        return df > 0 && double.IsFinite(df) ? df : null;
    }

    private static Interval? AgreementInterval(TrialTable table, double icc, double confidence)
    {
        if (AgreementDegreesOfFreedom(table, icc) is not { } v)
            return null;
        var (r, c, e) = (table.SubjectMeanSquare, table.TrialMeanSquare, table.ErrorMeanSquare);
        var (n, k) = ((double)table.Subjects, (double)table.Trials);
        var p = 0.5 + (confidence / 2);
        var upperQuantile = FisherF.Quantile(p, n - 1, v);
        var lowerQuantile = FisherF.Quantile(p, v, n - 1);
        var rest = (k * c) + (((k * n) - k - n) * e);
        var low = n * (r - (upperQuantile * e)) / ((upperQuantile * rest) + (n * r));
        var high = n * ((lowerQuantile * r) - e) / (rest + (n * lowerQuantile * r));
        return low <= high ? new Interval(low, high, confidence) : null;
    }

    private static Estimate Build(string method, TrialTable table, double confidence, double icc, FTest test, Func<Interval, Interval> transform)
    {
        Finite.RequireConfidence(confidence);
        Interval? interval = null;
        if (test.F is { } f)
        {
            var p = 0.5 + (confidence / 2);
            var low = f / FisherF.Quantile(p, test.NumeratorDegreesOfFreedom, test.DenominatorDegreesOfFreedom);
            var high = f * FisherF.Quantile(p, test.DenominatorDegreesOfFreedom, test.NumeratorDegreesOfFreedom);
            interval = low > 0 ? transform(new Interval(low, high, confidence)) : null;
        }

        return Finish(method, icc, interval, test);
    }

    private static Estimate Finish(string method, double icc, Interval? interval, FTest test) =>
        double.IsFinite(icc) && icc <= 1 ? Estimate.Of(method, icc, interval: interval, p: test.P) : Estimate.NotDefined(method, "the subjects do not differ enough: the denominator is not positive");

    private static Interval Single(Interval f, int k) => f with { Low = (f.Low - 1) / (f.Low + k - 1), High = (f.High - 1) / (f.High + k - 1) };

    private static Interval Mean(Interval f) => f with { Low = 1 - (1 / f.Low), High = 1 - (1 / f.High) };

    private static double? StepUp(double icc, int k) => 1 + ((k - 1) * icc) is > 0 and var divisor ? k * icc / divisor : null;
}
