using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Description;

/// <summary>The catalogue entries of one sample's location and scatter.</summary>
internal static class DescriptionEntries
{
    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        new()
        {
            Name = "mean",
            Title = "Arithmetic mean",
            Symbol = "x̄",
            Family = StatisticFamily.Description,
            What = "Sum of the values divided by their number, with compensated summation.",
            Needs = InputColumns.Value,
            Direction = EffectDirection.None,
            Assumptions = [],
            CitationKeys = ["chan-1983"],
            Computation = StatisticDefinition.Single(input => Of("mean", input, 1, s => s.Mean)),
        },
        new()
        {
            Name = "standard-deviation",
            Title = "Standard deviation with divisor n − 1",
            Symbol = "s",
            Family = StatisticFamily.Description,
            What = "Square root of the sum of squared deviations from the mean divided by n − 1, by the corrected two-pass algorithm.",
            Needs = InputColumns.Value,
            Direction = EffectDirection.LargerIsNoisier,
            LowerBound = 0,
            Assumptions = [],
            CitationKeys = ["chan-1983"],
            Computation = StatisticDefinition.Single(input => Of("standard-deviation", input, 2, s => s.StandardDeviation)),
        },
    ];

    private static Estimate Of(string method, TidyInput input, int least, Func<Summary, double?> pick)
    {
        var summary = Summary.Of([.. input.Values]);
        return pick(summary) is { } value
            ? Estimate.Of(method, value)
            : Estimate.NotDefined(method, $"needs at least {least} values, got {summary.Count}");
    }
}
