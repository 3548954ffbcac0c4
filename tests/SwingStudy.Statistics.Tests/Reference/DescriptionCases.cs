using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class DescriptionCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("summary of one sample", c => c.Expects("lag1_autocorrelation"), c => Summarise(Series(c))),
        new("one-way analysis of variance", c => c.Expects("ss_between") && c.Expects("r_squared"), c => Analyse(Groups(c))),
    ];

    private static Dictionary<string, object?> Summarise(double[] y)
    {
        var summary = Summary.Of(y);
        var lag1 = Autocorrelation.Lag1(y);
        return new()
        {
            ["n"] = summary.Count,
            ["mean"] = summary.Mean,
            ["sd"] = summary.StandardDeviation,
            ["lag1_autocorrelation"] = lag1,
            ["sd_exact_for_double_inputs"] = summary.StandardDeviation,
            ["lag1_exact_for_double_inputs"] = lag1,
        };
    }

    private static double[] Series(ReferenceCase reference)
    {
        if (reference.Has("y_digits_string"))
            return [.. reference.Text("y_digits_string").Select(digit => (double)(digit - '0'))];
        if (reference.Has("y"))
            return reference.Numbers("y");
        var pair = reference.Numbers("then_repeat_500_times");
        return [reference.Number("first"), .. Enumerable.Range(0, 500).SelectMany(_ => pair)];
    }

    private static Dictionary<string, object?> Analyse(double[][] groups)
    {
        var values = groups.SelectMany(g => g).ToArray();
        var numbers = groups.SelectMany((g, i) => Enumerable.Repeat(i, g.Length)).ToArray();
        var anova = OneWayAnova.Of(values, numbers)!;
        return new()
        {
            ["df_between"] = anova.BetweenDegreesOfFreedom,
            ["df_within"] = anova.WithinDegreesOfFreedom,
            ["ss_between"] = anova.BetweenSumOfSquares,
            ["ss_within"] = anova.WithinSumOfSquares,
            ["ms_between"] = anova.BetweenMeanSquare,
            ["ms_within"] = anova.WithinMeanSquare,
            ["F"] = anova.F,
            ["F_exact_for_double_inputs"] = anova.F,
            ["r_squared"] = anova.RSquared,
            ["residual_sd"] = Math.Sqrt(anova.WithinMeanSquare!.Value),
            ["p_value"] = anova.P,
        };
    }

    private static double[][] Groups(ReferenceCase reference)
    {
        if (reference.Has("groups"))
            return reference.Matrix("groups");
        var (first, pairs, repeats) = (reference.Numbers("groups_first"), reference.Matrix("groups_pair"), reference.Integer("repeats"));
        return [.. first.Select((x, i) => new[] { x }.Concat(Enumerable.Repeat(pairs[i], repeats).SelectMany(p => p)).ToArray())];
    }
}
