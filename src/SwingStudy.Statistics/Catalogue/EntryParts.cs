using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>How families read their shape of data out of a tidy table.</summary>
internal static class EntryParts
{
    /// <summary>The first condition to appear is 'before', the second 'after'.</summary>
    public static Estimate TwoConditions(string method, TidyInput input, Func<double[], double[], Estimate> compute)
    {
        var groups = input.ByCondition();
        return groups.Count == 2
            ? compute(groups[0].Values, groups[1].Values)
            : Estimate.NotDefined(method, $"needs exactly two conditions, got {groups.Count}");
    }

    /// <summary>As <see cref="TwoConditions"/>, for several rows.</summary>
    public static IReadOnlyList<NamedEstimate> TwoConditionRows(TidyInput input, Func<double[], double[], IReadOnlyList<NamedEstimate>> compute)
    {
        var groups = input.ByCondition();
        return groups.Count == 2 ? compute(groups[0].Values, groups[1].Values) : ResultRow.None($"needs exactly two conditions, got {groups.Count}");
    }

    /// <summary>Two independent samples.</summary>
    public static Estimate Independent(string method, TidyInput input, Func<IndependentContrast, double, Estimate> compute) =>
        TwoConditions(method, input, (before, after) => compute(IndependentContrast.Of(before, after), input.Confidence));

    /// <summary>Pairs: one value of each subject in each of two conditions; a subject without both is left out.</summary>
    public static Estimate Paired(string method, TidyInput input, Func<PairedContrast, double, Estimate> compute) =>
        Pairs(method, input, (before, after) => compute(PairedContrast.Of(before, after), input.Confidence));

    /// <summary>Pairs as two parallel arrays, in order of first appearance of the subject.</summary>
    public static Estimate Pairs(string method, TidyInput input, Func<double[], double[], Estimate> compute) =>
        PairRows(input, (before, after) => [new NamedEstimate("estimate", compute(before, after))])[0].Estimate with { Method = method };

    /// <summary>As <see cref="Pairs"/>, for several rows.</summary>
    public static IReadOnlyList<NamedEstimate> PairRows(TidyInput input, Func<double[], double[], IReadOnlyList<NamedEstimate>> compute) =>
        PairRows(input, input.Subjects!, (_, before, after) => compute(before, after));

    /// <summary>Pairs by any label; a label without both conditions is left out.</summary>
    public static IReadOnlyList<NamedEstimate> PairRows(
        TidyInput input, IReadOnlyList<string> labels, Func<string[], double[], double[], IReadOnlyList<NamedEstimate>> compute)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        var units = TidyInput.Index(labels);
        if (conditions.Length > 0 && conditions.Max() > 1)
            return ResultRow.None($"needs exactly two conditions, got {conditions.Max() + 1}");
        var pairs = new SortedDictionary<int, (string Label, double? Before, double? After)>();
        for (var i = 0; i < conditions.Length; i++)
        {
            var pair = pairs.GetValueOrDefault(units[i]);
            if ((conditions[i] == 0 ? pair.Before : pair.After) is not null)
                return ResultRow.None($"needs one value a subject and condition; '{labels[i]}' has more in '{input.Conditions![i]}'");
            pairs[units[i]] = conditions[i] == 0 ? (labels[i], input.Values[i], pair.After) : (labels[i], pair.Before, input.Values[i]);
        }

        var complete = pairs.Values.Where(p => p.Before is not null && p.After is not null).ToList();
        return compute([.. complete.Select(p => p.Label)], [.. complete.Select(p => p.Before!.Value)], [.. complete.Select(p => p.After!.Value)]);
    }
}
