using System.Globalization;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class DistributionCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("Student t", c => c.Has("t") && c.Has("df") && !c.Has("ncp") && c.Has("quantile_df"), StudentTValues),
        new("F", c => c.Has("x") && c.Has("df1") && c.Has("df2"), FisherFValues),
        new("chi-square", c => c.Has("x") && c.Has("df") && c.Expects("cdf"), ChiSquareValues),
        new("normal", c => c.Has("z") && c.Expects("cdf"), NormalValues),
        new("noncentral t", c => c.Has("ncp") && c.Has("t"), NoncentralTValues),
    ];

    private static Dictionary<string, object?> StudentTValues(ReferenceCase c)
    {
        var (t, df) = (c.Numbers("t"), c.Numbers("df"));
        return new()
        {
            ["cdf"] = Map(t, df, StudentT.Cdf),
            ["sf"] = Map(t, df, StudentT.UpperTail),
            ["two_sided"] = Map(t, df, StudentT.TwoSided),
            ["quantiles"] = Map(c.Numbers("quantile_p"), c.Numbers("quantile_df"), StudentT.Quantile),
        };
    }

    private static Dictionary<string, object?> FisherFValues(ReferenceCase c)
    {
        var (x, df1, df2) = (c.Numbers("x"), c.Numbers("df1"), c.Numbers("df2"));
        return new()
        {
            ["cdf"] = Map(x, df1, df2, FisherF.Cdf),
            ["sf"] = Map(x, df1, df2, FisherF.UpperTail),
            ["quantiles"] = Map(c.Numbers("quantile_p"), c.Numbers("quantile_df1"), c.Numbers("quantile_df2"), FisherF.Quantile),
        };
    }

    private static Dictionary<string, object?> ChiSquareValues(ReferenceCase c)
    {
        var (x, df) = (c.Numbers("x"), c.Numbers("df"));
        return new()
        {
            ["cdf"] = Map(x, df, ChiSquare.Cdf),
            ["sf"] = Map(x, df, ChiSquare.UpperTail),
            ["quantiles"] = Map(c.Numbers("quantile_p"), c.Numbers("quantile_df"), ChiSquare.Quantile),
        };
    }

    private static Dictionary<string, object?> NormalValues(ReferenceCase c) => new()
    {
        ["cdf"] = c.Numbers("z").Select(Normal.Cdf).ToArray(),
        ["sf"] = c.Numbers("z").Select(Normal.UpperTail).ToArray(),
        ["quantiles"] = c.Labels("quantile_p").Select(p => Normal.Quantile(double.Parse(p, CultureInfo.InvariantCulture))).ToArray(),
    };

    private static Dictionary<string, object?> NoncentralTValues(ReferenceCase c)
    {
        var (t, df, ncp) = (c.Numbers("t"), c.Numbers("df"), c.Numbers("ncp"));
        return new()
        {
            ["cdf"] = Map(t, df, ncp, NoncentralT.Cdf),
            ["sf"] = Map(t, df, ncp, NoncentralT.UpperTail),
            ["quantiles"] = Map(c.Numbers("quantile_p"), c.Numbers("quantile_df"), c.Numbers("quantile_ncp"), NoncentralT.Quantile),
            ["solved_ncp"] = Map(c.Numbers("solve_p"), c.Numbers("solve_t"), c.Numbers("solve_df"), NoncentralT.NcpFromCdf),
        };
    }

    private static double[] Map(double[] a, double[] b, Func<double, double, double> function) =>
        [.. a.Select((x, i) => function(x, b[i]))];

    private static double[] Map(double[] a, double[] b, double[] c, Func<double, double, double, double> function) =>
        [.. a.Select((x, i) => function(x, b[i], c[i]))];
}
