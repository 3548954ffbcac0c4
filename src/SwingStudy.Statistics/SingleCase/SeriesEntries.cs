using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>The catalogue entries of interrupted time series, serial dependence and between-case effects.</summary>
internal static class SeriesEntries
{
    private const string Lines = "Both phases follow straight lines, and the rows stand in order of time, equally spaced.";
    private const string Independent = "Errors are independent of each other.";
    private const string Autoregressive = "Errors carry over from one value to the next at a steady rate.";
    private const string SameChange = "The change is the same for every case, acts at once, and there is no trend.";

    private const string Absent = "this method and these data give none";

    private delegate SegmentedFit Fitting(ReadOnlySpan<double> values, int before, double confidence);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        .. Series(SegmentedRegression.OlsMethod, "least squares", "Ordinary least squares.", [Lines, Independent, "Errors vary equally."], ["huitema-mckean-2000"],
            SegmentedRegression.OrdinaryLeastSquares),
        .. Series(SegmentedRegression.Hc3Method, "least squares, HC3 errors", "Ordinary least squares with heteroskedasticity-consistent errors.", [Lines, Independent],
            ["mackinnon-white-1985"], SegmentedRegression.HeteroskedasticityConsistent3),
        .. Series(SegmentedRegression.NeweyWestMethod, "least squares, Newey–West errors", "Ordinary least squares; lag ⌊4(n/100)^(2/9)⌋, Bartlett weights.",
            [Lines, "The series is long against the lag."], ["newey-west-1987"],
            (values, before, confidence) => SegmentedRegression.NeweyWest(values, before, confidence: confidence)),
        .. Series(SegmentedRegression.PraisWinstenMethod, "Prais–Winsten", "Least squares after the lag-1 autocorrelation is removed, iterated.", [Lines, Autoregressive],
            ["prais-winsten-1954"], SegmentedRegression.PraisWinsten),
        .. Series(SegmentedLikelihood.MlMethod, "autoregressive errors, maximum likelihood", "Generalized least squares, φ by maximum likelihood.", [Lines, Autoregressive],
            ["pinheiro-bates-2000"], SegmentedLikelihood.MaximumLikelihood),
        .. Series(SegmentedLikelihood.RemlMethod, "autoregressive errors, restricted likelihood", "Generalized least squares, φ by restricted maximum likelihood.",
            [Lines, Autoregressive], ["pinheiro-bates-2000"], SegmentedLikelihood.RestrictedMaximumLikelihood),
        Entry(SeriesResiduals.DurbinWatsonMethod, "Durbin–Watson of an interrupted series", "d", "Σ(eₜ − eₜ₋₁)²/Σeₜ² of least-squares residuals, exact two-sided p.",
            InputColumns.Value | InputColumns.Condition, EffectDirection.None, [Lines], ["durbin-watson-1951"], 0, 4, null,
            input => OfSeries(SeriesResiduals.DurbinWatsonMethod, input, (values, before) => SeriesResiduals.Of(values, before).DurbinWatson)),
        Entry(LagOneAutocorrelation.ConventionalMethod, "Lag-1 autocorrelation", "r₁", "Σ(eₜ − m)(eₜ₋₁ − m)/Σ(eₜ − m)², biased to the negative in short series.",
            InputColumns.Value, EffectDirection.None, ["Rows stand in order of time, equally spaced, without trend."], ["huitema-mckean-1991"], -1, 1, 0,
            input => LagOneAutocorrelation.Conventional([.. input.Values])),
        Entry(LagOneAutocorrelation.BiasCorrectedMethod, "Lag-1 autocorrelation, bias taken off", "r₁⁺", "r₁ + p/n with p fitted coefficients.",
            InputColumns.Value, EffectDirection.None, ["Rows stand in order of time, equally spaced, without trend."], ["huitema-mckean-1991"], -1, 2, 0,
            input => LagOneAutocorrelation.BiasCorrected([.. input.Values], Math.Clamp((int)input.Setting("coefficients", 1), 1, Math.Max(1, input.Values.Count))),
            new StatisticSetting("coefficients", "regression coefficients behind the values when they are residuals; 1 is the mean", 1, 1, 1000, true)),
        Entry(OrderSlope.Method, "Slope of swings against their order in the session", "b", "Least-squares slope within each session, mean over sessions with a t interval; one predictor step is one swing.",
            InputColumns.Value | InputColumns.Session | InputColumns.Predictor, EffectDirection.PositiveWhenValuesRise, ["Sessions are independent of each other."], ["matthews-1990"],
            double.NegativeInfinity, double.PositiveInfinity, 0,
            input => OrderSlope.Of([.. input.Predictors!], [.. input.Values], TidyInput.Index(input.Sessions!), input.Confidence)),
        BetweenCases(BetweenCaseMoments.MultipleBaselineMethod, "Between-case standardized mean difference, moments, multiple baseline", ["hedges-2013"],
            (cases, _, treated, times, input) => BetweenCaseMoments.MultipleBaseline(cases, times, treated, [.. input.Values], input.Confidence)),
        BetweenCases(BetweenCaseMoments.ReversalMethod, "Between-case standardized mean difference, moments, withdrawal", ["hedges-2012"],
            (cases, pairs, treated, times, input) => BetweenCaseMoments.Reversal(cases, pairs, treated, times, [.. input.Values], input.Confidence)),
        BetweenCases(BetweenCaseLikelihood.Method, "Between-case standardized mean difference, restricted likelihood", ["pustejovsky-2014"],
            (cases, _, treated, times, input) => BetweenCaseLikelihood.MultipleBaseline(cases, times, treated, [.. input.Values], input.Confidence).Effect),
    ];

    private static IEnumerable<StatisticDefinition> Series(
        string method, string title, string what, string[] assumptions, string[] citations, Fitting fit)
    {
        yield return Entry(method, $"Interrupted series, all terms, {title}", "β", $"{what} Rows: level change, slope change, baseline level and slope, and what the method tells of the errors; time is 0 at the first row.",
            InputColumns.Value | InputColumns.Condition, EffectDirection.PositiveWhenValuesRise, assumptions, citations, double.NegativeInfinity, double.PositiveInfinity, 0,
            input => AllTerms(input, fit));
        yield return Term("level-change", "Level change", "jump at the first value after the change", f => f.LevelChange);
        yield return Term("slope-change", "Slope change", "slope after the change minus baseline slope", f => f.SlopeChange);

        StatisticDefinition Term(string suffix, string term, string meaning, Func<SegmentedFit, Estimate> pick)
        {
            var name = $"{method}-{suffix}";
            return Entry(name, $"{term} of an interrupted series, {title}", "β", $"{what} The {meaning}.", InputColumns.Value | InputColumns.Condition,
                EffectDirection.PositiveWhenValuesRise, assumptions, citations, double.NegativeInfinity, double.PositiveInfinity, 0,
                input => OfSeries(name, input, (values, before) => pick(fit(values, before, input.Confidence)) with { Method = name }));
        }
    }

    private static IReadOnlyList<NamedEstimate> AllTerms(TidyInput input, Fitting compute)
    {
        if (SeriesLack(input, out var before) is { } lack)
            return ResultRow.None(lack);
        var fit = compute([.. input.Values], before, input.Confidence);
        return
        [
            new("level-change", fit.LevelChange),
            new("slope-change", fit.SlopeChange),
            new("baseline-level", fit.Intercept),
            new("baseline-slope", fit.Time),
            ResultRow.Of("sigma", fit.Sigma, Absent),
            ResultRow.Of("r-squared", fit.RSquared, Absent),
            ResultRow.Of("autocorrelation", fit.Autocorrelation, Absent),
            ResultRow.Of("log-likelihood", fit.LogLikelihood, Absent),
        ];
    }

    private static string? SeriesLack(TidyInput input, out int before)
    {
        var phases = TidyInput.Index(input.Conditions!);
        before = phases.Count(phase => phase == 0);
        return phases.Any(phase => phase > 1) || phases.Skip(before).Contains(0)
            ? "needs two conditions, all rows of the first before those of the second"
            : null;
    }

    private static Estimate OfSeries(string name, TidyInput input, Func<double[], int, Estimate> compute) =>
        SeriesLack(input, out var before) is { } lack ? Estimate.NotDefined(name, lack) : compute([.. input.Values], before);

    private delegate BetweenCaseEffect OfCases(int[] cases, int[] pairs, bool[] treated, int[] times, TidyInput input);

    private static StatisticDefinition BetweenCases(string name, string title, string[] citations, OfCases compute) =>
        Entry(name, title, "g", "Change divided by the spread between and within cases, with the parts behind it; the predictor is the session number, the first condition the one without intervention.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject | InputColumns.Predictor, EffectDirection.PositiveWhenValuesRise,
            [SameChange, Autoregressive, "Cases are a sample of those it will be used for."], citations, double.NegativeInfinity, double.PositiveInfinity, 0,
            input => OfSubjects(input, compute));

    private static IReadOnlyList<NamedEstimate> OfSubjects(TidyInput input, OfCases compute)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        var cases = TidyInput.Index(input.Subjects!);
        if (conditions.Any(condition => condition > 1))
            return ResultRow.None("needs two conditions, the one without intervention first");
        if (input.Predictors!.Any(time => time != Math.Round(time) || Math.Abs(time) > 1e6))
            return ResultRow.None("needs whole session numbers as predictor");
        int[] times = [.. input.Predictors!.Select(time => (int)time)];
        if (cases.Zip(times).Distinct().Count() != cases.Length)
            return ResultRow.None("needs one value a subject and session number");
        var effect = compute(cases, PairNumbers(cases, conditions, times), [.. conditions.Select(condition => condition == 1)], times, input);
        return
        [
            new("effect", effect.Effect),
            ResultRow.Of("unadjusted-effect", effect.Unadjusted, Absent),
            ResultRow.Of("raw-change", effect.RawChange, Absent),
            ResultRow.Of("total-variance", effect.TotalVariance, Absent),
            ResultRow.Of("variance-within-cases", effect.WithinVariance, Absent),
            ResultRow.Of("variance-between-cases", effect.BetweenVariance, Absent),
            ResultRow.Of("autocorrelation", effect.Autocorrelation, Absent),
            ResultRow.Of("intraclass-correlation", effect.IntraclassCorrelation, Absent),
            ResultRow.Of("error-of-standardized-change", effect.ChangeError, Absent),
            ResultRow.Of("degrees-of-freedom", effect.DegreesOfFreedom, Absent),
            ResultRow.Of("values", effect.Count),
            ResultRow.Of("cases", effect.Cases),
        ];
    }

    // A new pair of phases begins wherever a case goes back to the condition without intervention.
    private static int[] PairNumbers(int[] cases, int[] conditions, int[] times)
    {
        var pairs = new int[cases.Length];
        foreach (var rows in Enumerable.Range(0, cases.Length).GroupBy(row => cases[row]))
        {
            int pair = 0, last = 0;
            foreach (var row in rows.OrderBy(row => times[row]))
            {
                pair += last == 1 && conditions[row] == 0 ? 1 : 0;
                last = conditions[row];
                pairs[row] = pair;
            }
        }

        return pairs;
    }

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, EffectDirection direction, string[] assumptions, string[] citations,
        double lower, double upper, double? none, Func<TidyInput, Estimate> compute, params StatisticSetting[] settings) =>
        Entry(name, title, symbol, what, needs, direction, assumptions, citations, lower, upper, none, StatisticDefinition.Single(compute), settings);

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, EffectDirection direction, string[] assumptions, string[] citations,
        double lower, double upper, double? none, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute, params StatisticSetting[] settings) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.SingleCase,
            What = what,
            Needs = needs,
            Direction = direction,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Settings = settings,
            Computation = compute,
        };
}
