using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class DescriptionCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("summary of one sample", c => c.Expects("lag1_autocorrelation"), c => Summarise(Series(c))),
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
}
