using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Curves;

public class CurveTestTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void GroupSumsAgreeWithAddingRowByRow(bool signed)
    {
        var rows = Made(7, 21, 1);
        var kernel = new LabelSums(rows, 21, signed);
        var chance = new Xoshiro256(2);
        var labels = new byte[50 * kernel.Groups];
        var drawer = signed ? CurveLabels.Flipping(7) : CurveLabels.Choosing(7, 3);
        drawer.Draw(chance, labels);
        var sums = new double[50 * 21];
        var largest = new double[50];
        kernel.Sums(labels, sums);
        kernel.LargestSums(labels, largest);
        for (var i = 0; i < 50; i++)
        {
            var expected = new double[21];
            var labelled = 0;
            for (var row = 0; row < 7; row++)
            {
                var isSet = ((labels[(i * kernel.Groups) + (row / 4)] >> (row % 4)) & 1) == 1;
                labelled += isSet ? 1 : 0;
                for (var node = 0; node < 21; node++)
                    expected[node] += isSet ? rows[row][node] : signed ? -rows[row][node] : 0;
            }

            Assert.True(signed || labelled == 3);
            Near.Equal(expected, sums.AsSpan(i * 21, 21).ToArray());
            Near.Equal(expected.Max(Math.Abs), largest[i]);
        }
    }

    [Fact]
    public void EveryLabellingComesOnce()
    {
        var flips = CurveLabels.Flipping(9).All().Chunk(3).Select(Convert.ToHexString).ToList();
        Assert.Equal(512, flips.Distinct().Count());
        var choices = CurveLabels.Choosing(9, 4).All().Chunk(3).Select(Convert.ToHexString).ToList();
        Assert.Equal(126, choices.Distinct().Count());
        Assert.Equal(126, choices.Count);
    }

    [Fact]
    public void SampledRelabellingsMeetTheExactThreshold()
    {
        double[][] first = Made(6, 40, 1), second = Made(6, 40, 2);
        var exact = CurveTest.TwoSample(first, second);
        Assert.True(exact.IsExact);
        Assert.Equal(924, exact.Compared);

        // The same curves with two more in each set: too many to go through, so both ways are compared on the sampled one's own error.
        double[][] more = Made(12, 40, 3), other = Made(12, 40, 4);
        var one = CurveTest.TwoSample(more, other, chance: new Xoshiro256(5), compared: 6000, threads: 1);
        var two = CurveTest.TwoSample(more, other, chance: new Xoshiro256(5), compared: 6000, threads: 2);
        Assert.False(one.IsExact);
        Assert.Equal(one.LargestTs, two.LargestTs);
        Assert.Equal(one.Clusters, two.Clusters);
        var another = CurveTest.TwoSample(more, other, chance: new Xoshiro256(6), compared: 6000);
        Near.Equal(one.Threshold, another.Threshold, 0.03);
        Assert.Throws<ArgumentException>(() => CurveTest.TwoSample(more, other));
    }

    [Fact]
    public void TheErrorRateOverTheWholeCurveIsHeld()
    {
        var chance = new Xoshiro256(21);
        var found = 0;
        for (var i = 0; i < 300; i++)
        {
            var all = Made(8, 30, chance.NextBits());
            found += CurveTest.TwoSample(all[..4], all[4..], alpha: 0.1).Clusters.Count > 0 ? 1 : 0;
        }

        // At most one in ten, and with 70 relabellings in pairs not far below.
        Assert.InRange(found / 300.0, 0.03, 0.155);
    }

    [Fact]
    public void ARealBumpIsFoundWhereItIsAndOnlyThere()
    {
        double[][] pre = Made(8, 60, 7), post = Made(8, 60, 8);
        foreach (var curve in post)
        {
            for (var node = 25; node < 35; node++)
                curve[node] += 8;
        }

        var cluster = Assert.Single(CurveTest.TwoSample(post, pre).Clusters);
        Assert.InRange(cluster.From, 24, 26);
        Assert.InRange(cluster.To, 33, 35);
        Assert.True(cluster.PeakT > 0);
        Near.Equal(2.0 / 12870, cluster.P);
        Assert.True(Assert.Single(CurveTest.TwoSample(pre, post).Clusters).PeakT < 0);
        Assert.True(Assert.Single(CurveTest.Paired(pre, post).Clusters).PeakT > 0);
    }

    [Fact]
    public void UnitOffsetAndOrderOfCurvesChangeNothing()
    {
        double[][] first = Made(5, 20, 1), second = Made(6, 20, 2);
        var plain = CurveTest.TwoSample(first, second);
        var moved = CurveTest.TwoSample(
            [.. first.Reverse().Select(c => Some.Plus(Some.Times(c, 1000), 1e9))], [.. second.Select(c => Some.Plus(Some.Times(c, 1000), 1e9))]);
        Near.Equal(plain.Threshold, moved.Threshold, 1e-6);
        Near.Equal(plain.T.Select(t => t!.Value), moved.T.Select(t => t!.Value), 1e-6);
        Assert.Equal(plain.P, moved.P);
    }

    [Fact]
    public void NodesThatDoNotVaryHaveNoTAndPerfectSeparationIsInfinite()
    {
        var test = CurveTest.TwoSample([[5, 1, 2], [5, 1, 3], [5, 1, 4]], [[5, 0, 1], [5, 0, 2], [5, 0, 5]]);
        Assert.Null(test.T[0]);
        Assert.Null(test.AdjustedP[0]);
        Assert.Equal(double.PositiveInfinity, test.T[1]);
        Near.Equal(2.0 / 20, test.AdjustedP[1]);
        Assert.True(double.IsFinite(test.T[2]!.Value));
    }

    [Fact]
    public void DegenerateSetsAreUndefinedOrRefused()
    {
        Assert.NotNull(CurveTest.TwoSample([], [[1, 2]]).Undefined);
        Assert.NotNull(CurveTest.TwoSample([[1, 2]], [[1, 3]]).Undefined);
        Assert.NotNull(CurveTest.TwoSample([[1, 1], [1, 1]], [[1, 1]]).Undefined);
        Assert.NotNull(CurveTest.TwoSample([[], []], [[]]).Undefined);
        Assert.NotNull(CurveTest.Paired([[1, 2]], [[2, 3]]).Undefined);
        Assert.Throws<ArgumentException>(() => CurveTest.TwoSample([[1, 2], [1]], [[1, 2]]));
        Assert.Throws<ArgumentException>(() => CurveTest.TwoSample([[1, 2], [1, double.NaN]], [[1, 2]]));
        Assert.Throws<ArgumentException>(() => CurveTest.Paired([[1, 2]], []));
        Assert.Throws<ArgumentException>(() => CurveTest.Paired([[1, 2], [2, 1]], [[1, 2], [3, 1]], alpha: 0));
    }

    /// <summary>Smooth curves of unit noise around a common hump.</summary>
    internal static double[][] Made(int curves, int nodes, ulong seed)
    {
        var normal = new NormalStream(new Xoshiro256(seed));
        return
        [
            .. Enumerable.Range(0, curves).Select(_ =>
            {
                var noise = normal.Next();
                return Enumerable.Range(0, nodes).Select(node => Math.Sin(Math.PI * node / nodes) + (noise = (0.8 * noise) + (0.6 * normal.Next()))).ToArray();
            }),
        ];
    }
}
