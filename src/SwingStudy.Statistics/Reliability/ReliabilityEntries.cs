using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The catalogue entries of reliability, measurement error and agreement.</summary>
internal static class ReliabilityEntries
{
    private const string Additive = "Subject, trial and error add up, each with constant variance.";
    private const string NormalErrors = "Errors are normally distributed.";
    private const string Spread = "The subjects are a sample of those it will be used for; it depends on their spread.";
    private const InputColumns Table = InputColumns.Value | InputColumns.Subject | InputColumns.Condition;
    private const InputColumns Nested = InputColumns.Value | InputColumns.Subject | InputColumns.Session;

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Icc("icc-1-1", "ICC(1,1): one trial, trials interchangeable", "(MSB − MSW)/(MSB + (k − 1) MSW)", IntraclassCorrelation.Icc11),
        Icc("icc-1-k", "ICC(1,k): mean of k trials, trials interchangeable", "(MSB − MSW)/MSB", IntraclassCorrelation.Icc1k),
        Icc("icc-2-1", "ICC(2,1): one trial, random trials, absolute agreement", "(MSR − MSE)/(MSR + (k − 1) MSE + k (MSC − MSE)/n)", IntraclassCorrelation.Icc21),
        Icc("icc-2-k", "ICC(2,k): mean of k trials, random trials, absolute agreement", "(MSR − MSE)/(MSR + (MSC − MSE)/n)", IntraclassCorrelation.Icc2k),
        Icc("icc-3-1", "ICC(3,1): one trial, fixed trials, consistency", "(MSR − MSE)/(MSR + (k − 1) MSE)", IntraclassCorrelation.Icc31),
        Icc("icc-3-k", "ICC(3,k): mean of k trials, fixed trials, consistency", "(MSR − MSE)/MSR", IntraclassCorrelation.Icc3k),
        Error(MeasurementError.TypicalMethod, "Typical error; SEM (consistency)", "TE", "√MSE of the two-way table.", MeasurementError.Typical, ["hopkins-2000", "weir-2005"]),
        Error(MeasurementError.AgreementMethod, "SEM (agreement)", "SEM", "√MSW of the one-way table: a shift of the trial means counts as error.", MeasurementError.Agreement, ["weir-2005"]),
        Error("sem-from-icc-2-1", "SEM from ICC(2,1)", "SEM", "SD of all values · √(1 − ICC(2,1)).", (t, c) => MeasurementError.FromIcc(t, IntraclassCorrelation.Icc21(t, c)), ["weir-2005"]),
        Error("sem-from-icc-3-1", "SEM from ICC(3,1)", "SEM", "SD of all values · √(1 − ICC(3,1)).", (t, c) => MeasurementError.FromIcc(t, IntraclassCorrelation.Icc31(t, c)), ["weir-2005"]),
        Error("smallest-detectable-change-typical-error", "Smallest detectable change from the typical error", "SDC", "z √2 · typical error.",
            (t, c) => MeasurementError.SmallestDetectableChange(MeasurementError.Typical(t, c), c), ["weir-2005"]),
        Error("smallest-detectable-change-sem-agreement", "Smallest detectable change from SEM (agreement)", "SDC", "z √2 · SEM (agreement).",
            (t, c) => MeasurementError.SmallestDetectableChange(MeasurementError.Agreement(t, c), c), ["weir-2005"]),
        Error("coefficient-of-variation", "Coefficient of variation from the typical error", "CV%", "100 · typical error / grand mean.", MeasurementError.CoefficientOfVariation, ["hopkins-2000"]),
        OfTable("typical-error-log-percent", "Typical error in percent from logarithms", "CV%", "100 (e^{typical error of ln values} − 1).", StatisticFamily.Reliability,
            EffectDirection.LargerIsNoisier, [Additive, NormalErrors, "Errors grow in proportion to the value."], ["hopkins-2000"], 0, double.PositiveInfinity, null,
            (values, trials, confidence) => MeasurementError.TypicalLogPercent(values, trials, confidence)),
        OfTable("cv-within-subject-rms", "Within-subject coefficient of variation, root mean square", "CV%", "100 √(mean of (s_i/mean_i)²).", StatisticFamily.Reliability,
            EffectDirection.LargerIsNoisier, ["Errors grow in proportion to the value."], ["hopkins-2000"], 0, double.PositiveInfinity, null,
            (values, trials, _) => MeasurementError.WithinSubjectVariation(values, trials)),
        Component("variance-component-player", "Variance between players, nested analysis of variance", "σ_p²", a => a.SubjectVariance),
        Component("variance-component-session", "Variance between sessions of a player, nested analysis of variance", "σ_s²", a => a.SessionVariance),
        Component("variance-component-swing", "Variance between swings of a session, nested analysis of variance", "σ_e²", a => a.TrialVariance),
        Agreement(BlandAltman.BiasMethod, "Bias of two sources", "bias", "Mean of first − second; t interval.", EffectDirection.PositiveWhenFirstIsHigher, 0, a => a.Bias),
        Agreement(BlandAltman.LowerMethod, "Lower limit of agreement", "LoA", "bias − 1.96 SD of the differences; t interval.", EffectDirection.None, null, a => a.Lower),
        Agreement(BlandAltman.UpperMethod, "Upper limit of agreement", "LoA", "bias + 1.96 SD of the differences; t interval.", EffectDirection.None, null, a => a.Upper),
        Agreement(BlandAltman.ProportionalMethod, "Proportional bias", "b", "Slope of the differences on the pair means.", EffectDirection.None, 0, a => a.Proportional),
        Pairs(Concordance.Method, "Concordance correlation (Lin)", "ρ_c", "2 s_xy/(s_x² + s_y² + (x̄ − ȳ)²), divisor n.", EffectDirection.LargerIsCloser, -1, 1, null,
            ["Pairs are independent and jointly normal.", Spread], ["lin-1989"],
            (x, y, c) => Concordance.Of(x, y, c)?.Coefficient ?? Estimate.NotDefined(Concordance.Method, "needs at least 3 pairs and two sources that vary")),
        Pairs("repeatability-coefficient", "Repeatability coefficient", "RC", "1.96 √2 s_w, s_w from differences of repeated readings about zero.", EffectDirection.LargerIsNoisier,
            0, double.PositiveInfinity, null, ["Both readings are of the same thing.", "Differences do not grow with the value."], ["bland-altman-1999"],
            (x, y, c) => Repeatability.Of(x, y) is { } r
                ? Estimate.Of("repeatability-coefficient", r.Coefficient(c))
                : Estimate.NotDefined("repeatability-coefficient", "needs at least 1 pair, got 0")),
    ];

    private delegate Estimate FromTable(TrialTable table, double confidence);

    private static StatisticDefinition Icc(string name, string title, string formula, FromTable compute) =>
        OfTable(name, title, "ICC", formula + ", not cut at zero.", StatisticFamily.Reliability, EffectDirection.LargerIsCloser,
            [Additive, NormalErrors, Spread], ["shrout-fleiss-1979", "mcgraw-wong-1996"], double.NegativeInfinity, 1, 0,
            (values, trials, confidence) => compute(TrialTable.Of(values, trials), confidence));

    private static StatisticDefinition Error(string name, string title, string symbol, string what, FromTable compute, string[] citations) =>
        OfTable(name, title, symbol, what, StatisticFamily.Reliability, EffectDirection.LargerIsNoisier, [Additive, NormalErrors], citations,
            0, double.PositiveInfinity, null, (values, trials, confidence) => compute(TrialTable.Of(values, trials), confidence));

    private static StatisticDefinition OfTable(
        string name, string title, string symbol, string what, StatisticFamily family, EffectDirection direction, string[] assumptions,
        string[] citations, double lower, double upper, double? none, Func<double[], int, double, Estimate> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = family,
            What = what,
            Needs = Table,
            Direction = direction,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Computation = StatisticDefinition.Single(input => CompleteTable(name, input, compute)),
        };

    private static StatisticDefinition Component(string name, string title, string symbol, Func<NestedAnova, double?> pick) => new()
    {
        Name = name,
        Title = title,
        Symbol = symbol,
        Family = StatisticFamily.Reliability,
        What = "Method-of-moments estimate from expected mean squares; may be negative.",
        Needs = Nested,
        Direction = EffectDirection.LargerIsNoisier,
        Assumptions = [Additive],
        CitationKeys = ["searle-1971"],
        Computation = StatisticDefinition.Single(input =>
            NestedAnova.Of([.. input.Values], TidyInput.Index(input.Subjects!), TidyInput.Index(input.Sessions!)) is { } anova && pick(anova) is { } value
                ? Estimate.Of(name, value)
                : Estimate.NotDefined(name, "needs at least 2 players, a player with 2 sessions and a session with 2 swings")),
    };

    private static StatisticDefinition Agreement(
        string name, string title, string symbol, string what, EffectDirection direction, double? none, Func<BlandAltman, Estimate> pick) =>
        Pairs(name, title, symbol, what, direction, double.NegativeInfinity, double.PositiveInfinity, none,
            ["Pairs are independent.", "Differences are normally distributed and do not grow with the value."], ["bland-altman-1986", "bland-altman-1999"],
            (x, y, c) => BlandAltman.Of(x, y, c) is { } analysis ? pick(analysis) : Estimate.NotDefined(name, $"needs at least 3 pairs, got {x.Length}"));

    private static StatisticDefinition Pairs(
        string name, string title, string symbol, string what, EffectDirection direction, double lower, double upper, double? none,
        string[] assumptions, string[] citations, Func<double[], double[], double, Estimate> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Agreement,
            What = what,
            Needs = Table,
            Direction = direction,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Computation = StatisticDefinition.Single(input => EntryParts.Pairs(name, input, (x, y) => compute(x, y, input.Confidence))),
        };

    /// <summary>Rows are subjects, columns the conditions (trials, raters); a subject without all of them is left out.</summary>
    private static Estimate CompleteTable(string method, TidyInput input, Func<double[], int, double, Estimate> compute)
    {
        var (subjects, trials) = (TidyInput.Index(input.Subjects!), TidyInput.Index(input.Conditions!));
        var (n, k) = (subjects.Length == 0 ? 0 : subjects.Max() + 1, trials.Length == 0 ? 0 : trials.Max() + 1);
        var cells = new double?[n, k];
        for (var i = 0; i < subjects.Length; i++)
        {
            if (cells[subjects[i], trials[i]] is not null)
                return Estimate.NotDefined(method, $"needs one value a subject and condition; '{input.Subjects![i]}' has more in '{input.Conditions![i]}'");
            cells[subjects[i], trials[i]] = input.Values[i];
        }

        var complete = Enumerable.Range(0, n).Where(r => Enumerable.Range(0, k).All(c => cells[r, c] is not null)).ToArray();
        return complete.Length < 2 || k < 2
            ? Estimate.NotDefined(method, $"needs at least 2 subjects with all of at least 2 conditions, got {complete.Length} with {k}")
            : compute([.. complete.SelectMany(r => Enumerable.Range(0, k).Select(c => cells[r, c]!.Value))], k, input.Confidence);
    }
}
