using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Resampling;

public class RandomizationTests
{
    /// <summary>Counts of admissible assignments: Onghena (1992) for phase changes; the others by combinatorics.</summary>
    public static TheoryData<string, AssignmentScheme, double> Schemes => new()
    {
        { "20 occasions, at least 5 a phase", PhaseStartScheme.WithAtLeast(20, 5), 11 },
        { "30 occasions, at least 5 a phase", PhaseStartScheme.WithAtLeast(30, 5), 21 },
        { "given starts", new PhaseStartScheme(10, [3, 5, 7]), 3 },
        { "ABAB in 24, at least 4 a phase", new PhaseChangeScheme(24, 4, 4), 165 },
        { "ABA in 9, no spare occasion", new PhaseChangeScheme(9, 3, 3), 1 },
        { "5 and 5 in any order", new AlternatingScheme(5, 5, 10), 252 },
        { "3 and 3, strictly in turn", new AlternatingScheme(3, 3, 1), 2 },
        { "4 and 3, at most 2 in a row", new AlternatingScheme(4, 3, 2), 18 },
        { "6 blocks of two", new BlockedScheme(6), 64 },
    };

    [Theory]
    [MemberData(nameof(Schemes))]
    public void ASchemeVisitsEachOfItsAssignmentsOnceAndAdmitsThem(string name, AssignmentScheme scheme, double count)
    {
        var seen = new HashSet<string>();
        scheme.VisitAll(assignment =>
        {
            Assert.True(scheme.Admits(assignment), name);
            Assert.True(seen.Add(string.Concat(assignment.ToArray().Select(b => b ? 'B' : 'A'))), name);
        });
        Assert.Equal(count, scheme.Count);
        Assert.Equal(count, seen.Count);
    }

    [Theory]
    [MemberData(nameof(Schemes))]
    public void DrawsAreAdmissibleAndReachEveryAssignmentEquallyOften(string name, AssignmentScheme scheme, double count)
    {
        var chance = new Xoshiro256(4);
        var seen = new Dictionary<string, int>();
        var assignment = new bool[scheme.Length];
        var draws = (int)(200 * count);
        for (var i = 0; i < draws; i++)
        {
            scheme.Draw(chance, assignment);
            Assert.True(scheme.Admits(assignment), name);
            var key = string.Concat(assignment.Select(b => b ? 'B' : 'A'));
            seen[key] = seen.GetValueOrDefault(key) + 1;
        }

        Assert.Equal(count, seen.Count);

        // Chi-square over all cells stays within six standard deviations of its mean.
        var square = seen.Values.Sum(n => Math.Pow(n - 200, 2) / 200.0);
        Assert.InRange(square, 0, count - 1 + (6 * Math.Sqrt(2 * count)) + 1e-9);
    }

    [Fact]
    public void AnAssignmentOutsideTheSchemeIsRefused()
    {
        double[] y = [1, 2, 3, 4, 5, 6, 7, 8];
        Assert.Throws<ArgumentException>(() => RandomizationTest.Of(y, PhaseStartScheme.Assignment(8, 1), PhaseStartScheme.WithAtLeast(8, 3)));
        Assert.Throws<ArgumentException>(() => RandomizationTest.Of(y, [true, true, false, false, true, true, false, false], new BlockedScheme(4)));
        Assert.Throws<ArgumentException>(() => new PhaseStartScheme(5, [5]));
        Assert.Throws<ArgumentException>(() => new PhaseStartScheme(5, []));
        Assert.Throws<ArgumentException>(() => new PhaseChangeScheme(7, 4, 2));
        Assert.Throws<ArgumentException>(() => new AlternatingScheme(5, 1, 2));
    }

    [Fact]
    public void TheFreeAlternatingSchemeIsThePermutationTest()
    {
        double[] y = [3, 5, 4, 8, 2, 9, 6, 7, 5, 4];
        bool[] actual = [false, true, false, true, false, true, false, true, true, false];
        var test = RandomizationTest.Of(y, actual, new AlternatingScheme(5, 5, 10));
        var permutation = TwoSampleMeanPermutation.Exact([.. y.Where((_, i) => actual[i])], [.. y.Where((_, i) => !actual[i])]);
        Assert.Equal((permutation.CountGreater, permutation.CountTwoSided), (test.CountGreater, test.CountTwoSided));
        Near.Equal(1.0 / 252, test.SmallestPossibleP);
        Assert.True(test.IsExact);
    }

    [Fact]
    public void TooManyAssignmentsAreSampledWithTheObservedOneCounted()
    {
        var normal = new NormalStream(new Xoshiro256(5));
        bool[] actual = [.. Enumerable.Range(0, 40).Select(i => i % 2 == 1)];
        double[] y = [.. actual.Select(b => normal.Next() + (b ? 3 : 0))];
        var scheme = new AlternatingScheme(20, 20, 2);
        var one = RandomizationTest.Of(y, actual, scheme, chance: new Xoshiro256(9), resamples: 3000, threads: 1);
        Assert.Equal(one, RandomizationTest.Of(y, actual, scheme, chance: new Xoshiro256(9), resamples: 3000, threads: 2));
        Assert.Equal(3001, one.Compared);
        Assert.False(one.IsExact);
        Assert.InRange(one.PTwoSided!.Value, 1.0 / 3001, 0.01);
        Assert.Throws<ArgumentException>(() => RandomizationTest.Of(y, actual, scheme));
    }

    [Fact]
    public void MediansAreComparedWhenThatWasChosen()
    {
        double[] y = [1, 2, 100, 4, 5, 6];
        var test = RandomizationTest.Of(y, PhaseStartScheme.Assignment(6, 3), new PhaseStartScheme(6, [2, 3, 4]), ConditionStatistic.MedianDifference);
        Assert.Equal(5 - 2, test.Observed);
    }

    [Fact]
    public void AnOffsetOfABillionChangesNoP()
    {
        double[] y = [5, 6, 4, 5, 7, 5, 9, 10, 8, 9, 11];
        var scheme = PhaseStartScheme.WithAtLeast(11, 2);
        var actual = PhaseStartScheme.Assignment(11, 6);
        var plain = RandomizationTest.Of(y, actual, scheme);
        Assert.Equal(plain.CountTwoSided, RandomizationTest.Of(Some.Plus(y, 1e9), actual, scheme).CountTwoSided);
        Assert.Equal(1, RandomizationTest.Of(new double[11], actual, scheme).PTwoSided);
    }

    [Theory]
    [InlineData(3, 6)]
    [InlineData(4, 24)]
    [InlineData(5, 120)]
    public void DrawingWhichPlayerStartsWhenGivesAllOrders(int players, int orders)
    {
        // Wampold and Worsham (1986): fixed staggered starts, players drawn to them.
        double[][] series = [.. Enumerable.Range(0, players).Select(p => Enumerable.Range(0, 12).Select(t => t >= 3 + p ? 10.0 + p : 0.0).ToArray())];
        int[][] windows = [.. Enumerable.Range(0, players).Select(p => new[] { 3 + p })];
        int[] actual = [.. Enumerable.Range(0, players).Select(p => 3 + p)];
        var test = MultipleBaselineTest.Of(series, windows, actual, orderDrawn: true);
        Assert.Equal(orders, test.Assignments);
        Assert.Equal(1, test.CountGreater);
        Near.Equal(1.0 / orders, test.PGreater);
    }

    [Fact]
    public void StartsAndOrderTogetherMultiply()
    {
        double[][] series = [[1, 2, 5, 6, 7, 6, 7, 8], [1, 1, 2, 1, 5, 6, 7, 6], [3, 2, 3, 2, 3, 2, 8, 9]];
        int[][] windows = [[2, 3], [4, 5], [6]];
        Assert.Equal(6 * 4, MultipleBaselineTest.Of(series, windows, [2, 4, 6], orderDrawn: true).Assignments);
        Assert.Equal(4, MultipleBaselineTest.Of(series, windows, [2, 4, 6]).Assignments);
        Assert.Throws<ArgumentException>(() => MultipleBaselineTest.Of(series, windows, [4, 2, 6]));
        Assert.Equal(24, MultipleBaselineTest.Of(series, windows, [4, 2, 6], orderDrawn: true).Compared);
        Assert.NotNull(MultipleBaselineTest.Of([], [], []).Undefined);
    }
}
