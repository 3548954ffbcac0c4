using System.Text.Json;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class ResamplingCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("permutation of two groups", c => c.Has("group1") && c.Expects("count_two_sided"),
            c => Named(TwoSampleMeanPermutation.Exact(c.Numbers("group1"), c.Numbers("group2")))),
        new("sign flips", c => c.Has("differences") && c.Expects("count_two_sided"), c => Named(SignFlip.Exact(c.Numbers("differences")))),
        new("randomized phase start", c => c.Has("possible_starts_1based") && c.Has("y"), PhaseStart),
        new("randomized starts of several cases", c => c.Has("possible_starts_1based") && c.Has("series"), MultipleBaseline),
        new("signed ranks", c => c.Expects("wilcoxon"), SignedRanks),
        new("rank sums", c => c.Expects("rank_sum_1"), RankSums),
        new("bootstrap with given resamples", c => c.Has("resample_indices_0based"), GivenResamples),
        new("acceleration of the mean", c => c.Expects("skew_check"), Acceleration),
    ];

    private static Dictionary<string, object?> Named(RandomizationResult test) => new()
    {
        ["observed"] = test.Observed,
        ["n"] = test.Compared,
        ["n_permutations"] = test.Assignments,
        ["count_two_sided"] = test.CountTwoSided,
        ["count_greater"] = test.CountGreater,
        ["count_less"] = test.CountLess,
        ["p_two_sided"] = test.PTwoSided,
        ["p_greater"] = test.PGreater,
        ["p_less"] = test.PLess,
    };

    private static Dictionary<string, object?> PhaseStart(ReferenceCase c)
    {
        var y = c.Numbers("y");
        var scheme = new PhaseStartScheme(y.Length, c.Numbers("possible_starts_1based").Select(s => (int)s - 1));
        var actual = PhaseStartScheme.Assignment(y.Length, c.Integer("actual_start_1based") - 1);
        var values = Named(RandomizationTest.Of(y, actual, scheme));
        values["statistics"] = RandomizationTest.Distribution(y, scheme);
        return values;
    }

    private static Dictionary<string, object?> MultipleBaseline(ReferenceCase c) => Named(MultipleBaselineTest.Of(
        c.Matrix("series"),
        [.. c.Matrix("possible_starts_1based").Select(starts => starts.Select(s => (int)s - 1).ToArray())],
        [.. c.Numbers("actual_starts_1based").Select(s => (int)s - 1)]));

    private static Dictionary<string, object?> SignedRanks(ReferenceCase c)
    {
        double[] pre = c.Numbers("pre"), post = c.Numbers("post");
        return new()
        {
            ["wilcoxon"] = Parts(WilcoxonSignedRank.Of(pre, post)),
            ["pratt"] = Parts(WilcoxonSignedRank.Of(pre, post, ZeroDifferences.RankedThenDropped)),
        };

        static Dictionary<string, object?> Parts(RankTest test) => new()
        {
            ["V"] = test.Statistic,
            ["n_used"] = test.Used,
            ["p_two_sided"] = test.PTwoSided,
            ["p_greater"] = test.PGreater,
            ["p_less"] = test.PLess,
            ["z_no_continuity"] = test.ZWithoutContinuity,
            ["p_normal_no_continuity"] = test.PNormal,
            ["z_continuity"] = test.ZWithContinuity,
        };
    }

    private static Dictionary<string, object?> RankSums(ReferenceCase c)
    {
        var test = MannWhitney.Of(c.Numbers("group1"), c.Numbers("group2"));
        return new()
        {
            ["U"] = test.Statistic,
            ["rank_sum_1"] = test.RankSum,
            ["n_permutations"] = test.Assignments,
            ["p_two_sided"] = test.PTwoSided,
            ["p_greater"] = test.PGreater,
            ["p_less"] = test.PLess,
            ["var_U_tie_corrected"] = test.Variance,
            ["z_no_continuity"] = test.ZWithoutContinuity,
            ["z_continuity"] = test.ZWithContinuity,
        };
    }

    private static Dictionary<string, object?> GivenResamples(ReferenceCase c)
    {
        int[][] resamples = [.. c.Matrix("resample_indices_0based").Select(row => row.Select(i => (int)i).ToArray())];
        var run = Bootstrap.Given(Statistic(c), resamples)!;
        var boot = run.Distribution;
        var jackknife = run.Jackknife!;
        return new()
        {
            ["t0"] = boot.Observed,
            ["boot_mean"] = boot.Mean,
            ["boot_se"] = boot.StandardError,
            ["boot_bias"] = boot.Bias,
            ["replicates_first5"] = boot.Replicates.Take(5).ToArray(),
            ["share_below_t0"] = boot.ShareBelow,
            ["z0"] = boot.Z0,
            ["acceleration"] = jackknife.Acceleration,
            ["jackknife"] = jackknife.Values,
            ["jackknife_se"] = jackknife.StandardError,
            ["jackknife_bias"] = jackknife.Bias(boot.Observed),
            ["bca_adjusted_levels"] = Limits(boot.BcaLevels(jackknife.Acceleration)),
            ["percentile_norm_inter"] = Limits(boot.Percentile(rule: QuantileRule.NormalInterpolation)),
            ["percentile_type6"] = Limits(boot.Percentile(rule: QuantileRule.HyndmanFan6)),
            ["percentile_type7"] = Limits(boot.Percentile(rule: QuantileRule.HyndmanFan7)),
            ["basic_norm_inter"] = Limits(boot.Basic(rule: QuantileRule.NormalInterpolation)),
            ["bca_norm_inter"] = Limits(boot.Bca(jackknife.Acceleration, rule: QuantileRule.NormalInterpolation)),
            ["bca_type6"] = Limits(boot.Bca(jackknife.Acceleration, rule: QuantileRule.HyndmanFan6)),
            ["bca_type7"] = Limits(boot.Bca(jackknife.Acceleration, rule: QuantileRule.HyndmanFan7)),
        };
    }

    private static RowStatistic Statistic(ReferenceCase c)
    {
        var name = c.Text("statistic");
        if (c.Inputs.GetProperty("data")[0].ValueKind == JsonValueKind.Array)
        {
            var rows = c.Matrix("data");
            return new CorrelationStatistic([.. rows.Select(r => r[0])], [.. rows.Select(r => r[1])]);
        }

        var data = c.Numbers("data");
        return name switch
        {
            "mean" => new MeanStatistic(data),
            "median" => new MedianStatistic(data),
            _ when name.StartsWith("mean/sd", StringComparison.Ordinal) => new MeanStatistic(data, standardized: true),
            _ => throw new NotSupportedException($"No row statistic is called '{name}'."),
        };
    }

    private static Dictionary<string, object?> Acceleration(ReferenceCase c)
    {
        var data = c.Numbers("data");
        var run = Bootstrap.Rows(new MeanStatistic(data), new Xoshiro256(1), resamples: 1)!;
        double n = data.Length, mean = data.Average();
        var second = data.Sum(x => Math.Pow(x - mean, 2)) / n;
        var third = data.Sum(x => Math.Pow(x - mean, 3)) / n;
        return new()
        {
            ["acceleration"] = run.Jackknife!.Acceleration,
            ["skew_check"] = third / Math.Pow(second, 1.5) / (6 * Math.Sqrt(n)),
        };
    }

    private static double[]? Limits(Interval? interval) => interval is { } limits ? [limits.Low, limits.High] : null;
}
