using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>What one statistic is, what it needs and how to read it: the single source for help, tables, reports and documents.</summary>
public sealed record StatisticDefinition
{
    /// <summary>The method word, kebab-case, such as <c>hedges-g-pooled</c>: the same in code, in <see cref="Estimate.Method"/> and in tables.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it, with the variant.</summary>
    public required string Title { get; init; }

    /// <summary>The symbol in print, such as <c>g</c>.</summary>
    public required string Symbol { get; init; }

    /// <summary>The family it is listed under.</summary>
    public required StatisticFamily Family { get; init; }

    /// <summary>One or two sentences: what it estimates, with the formula in words or signs.</summary>
    public required string What { get; init; }

    /// <summary>The columns it needs; none when it is computed from settings alone.</summary>
    public required InputColumns Needs { get; init; }

    /// <summary>How a larger value reads.</summary>
    public required EffectDirection Direction { get; init; }

    /// <summary>Smallest possible value; negative infinity when there is none.</summary>
    public double LowerBound { get; init; } = double.NegativeInfinity;

    /// <summary>Largest possible value; positive infinity when there is none.</summary>
    public double UpperBound { get; init; } = double.PositiveInfinity;

    /// <summary>The value that says 'no effect'; null when none does.</summary>
    public double? NullValue { get; init; }

    /// <summary>What must hold for the estimate and its interval to mean what they say; one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>Keys into <see cref="Citations"/>, the main source first.</summary>
    public required IReadOnlyList<string> CitationKeys { get; init; }

    /// <summary>Settings it reads beyond the confidence.</summary>
    public IReadOnlyList<StatisticSetting> Settings { get; init; } = [];

    /// <summary>The computation on a table that has the needed columns, the main quantity first; call <see cref="Results"/>, which checks first.</summary>
    public required Func<TidyInput, IReadOnlyList<NamedEstimate>> Computation { get; init; }

    /// <summary>The computation of a statistic that is one number.</summary>
    public static Func<TidyInput, IReadOnlyList<NamedEstimate>> Single(Func<TidyInput, Estimate> compute) =>
        input => [new NamedEstimate("estimate", compute(input))];

    /// <summary>What is wrong with these settings: unknown, missing or out of range; empty when nothing.</summary>
    public IReadOnlyList<string> FaultsOf(IReadOnlyDictionary<string, double> settings) =>
    [
        .. settings.Keys.Where(name => Settings.All(setting => setting.Name != name)).Select(name => $"'{name}' is no setting of {Name}"),
        .. Settings.Select(setting => setting.Fault(settings)).OfType<string>(),
    ];

    /// <summary>The main quantity alone: the first row of <see cref="Results"/>.</summary>
    /// <returns>The estimate, or an undefined one with its reason. Its method is <see cref="Name"/>.</returns>
    /// <exception cref="ArgumentException">As <see cref="Results"/>.</exception>
    public Estimate Compute(TidyInput input) => Results(input)[0].Estimate;

    /// <summary>Computes the statistic on a tidy table; without <see cref="Needs"/>, from the settings alone.</summary>
    /// <returns>
    /// At least one row, the main quantity first; each an estimate or an undefined one with its reason. Bounds and null value of this definition
    /// are those of the first row. The method is <see cref="Name"/> throughout.
    /// </returns>
    /// <exception cref="ArgumentException">
    /// A needed column is missing or has another length, a value is not finite, or a setting it reads is missing or out of range.
    /// </exception>
    public IReadOnlyList<NamedEstimate> Results(TidyInput input)
    {
        input.Validate();
        var missing = Needs & ~input.Columns;
        if (missing != InputColumns.None)
            throw new ArgumentException($"{Name} needs the columns {Needs}; missing: {missing}.", nameof(input));
        RequireFinite(input.Values, "value", nameof(input));
        RequireFinite(input.Predictors, "predictor", nameof(input));
        RequireFinite(input.Variances, "variance", nameof(input));
        if (Settings.Select(setting => setting.Fault(input.Settings)).OfType<string>().FirstOrDefault() is { } fault)
            throw new ArgumentException($"{Name}: {fault}.", nameof(input));
        return [.. Computation(input).Select(row => row with { Estimate = row.Estimate with { Method = Name } })];
    }

    private static void RequireFinite(IReadOnlyList<double>? values, string what, string parameter)
    {
        for (var i = 0; i < values?.Count; i++)
        {
            if (!(Math.Abs(values[i]) <= Finite.Largest))
                throw new ArgumentException($"Every {what} must be a number of at most {Finite.Largest} in size; row {i + 1} holds {values[i]}.", parameter);
        }
    }
}
