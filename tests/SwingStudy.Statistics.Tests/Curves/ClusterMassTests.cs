using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Curves;

public class ClusterMassTests
{
    [Fact]
    public void TheMassAndItsExactPAgreeWithRelabellingByHand()
    {
        double[][] all = CurveTestTests.Made(7, 25, 5);
        foreach (var curve in all[..3])
        {
            for (var node = 8; node < 16; node++)
                curve[node] += 2;
        }

        var test = ClusterMassTest.TwoSample(all[..3], all[3..]);
        var mark = StudentT.Critical(0.95, 5);
        Near.Equal(mark, test.FormingT);
        var heaviest = new List<double>();
        for (var set = 0; set < 1 << 7; set++)
        {
            if (int.PopCount(set) == 3)
                heaviest.Add(Masses(T(all, set), mark).Select(Math.Abs).DefaultIfEmpty(0).Max());
        }

        var observed = Masses(T(all, 0b111), mark);
        Assert.Equal(observed.Count, test.Clusters.Count);
        Assert.NotEmpty(observed);
        for (var i = 0; i < observed.Count; i++)
        {
            Near.Equal(observed[i], test.Clusters[i].Mass);
            Near.Equal(heaviest.Count(mass => mass >= Math.Abs(observed[i]) - 1e-9) / 35.0, test.Clusters[i].P);
        }
    }

    [Fact]
    public void PairedRunsTurnTheirSignWhenPairsAreSwapped()
    {
        double[][] pre = CurveTestTests.Made(8, 40, 1), post = CurveTestTests.Made(8, 40, 2);
        var forth = ClusterMassTest.Paired(pre, post, 0.2);
        var back = ClusterMassTest.Paired(post, pre, 0.2);
        Assert.True(forth.IsExact);
        Assert.NotEmpty(forth.Clusters);
        Assert.Equal(forth.Clusters.Select(c => (c.From, c.To, c.P)), back.Clusters.Select(c => (c.From, c.To, c.P)));
        Near.Equal(forth.Clusters.Select(c => -c.Mass), back.Clusters.Select(c => c.Mass));
    }

    [Fact]
    public void SampledRelabellingsMeetTheExactPAndThreadsDoNotMatter()
    {
        double[][] first = CurveTestTests.Made(12, 30, 1), second = [.. CurveTestTests.Made(12, 30, 2).Select(c => Some.Plus(c, 0.8))];
        var one = ClusterMassTest.TwoSample(first, second, chance: new Xoshiro256(1), compared: 4000, threads: 1);
        var two = ClusterMassTest.TwoSample(first, second, chance: new Xoshiro256(1), compared: 4000, threads: 2);
        Assert.False(one.IsExact);
        Assert.Equal(one.Clusters, two.Clusters);
        var another = ClusterMassTest.TwoSample(first, second, chance: new Xoshiro256(2), compared: 4000);
        for (var i = 0; i < one.Clusters.Count; i++)
            Assert.InRange(one.Clusters[i].P - another.Clusters[i].P, -4 * Math.Sqrt(0.5 / 4000), 4 * Math.Sqrt(0.5 / 4000));
    }

    [Fact]
    public void DegenerateSetsAreUndefinedOrRefused()
    {
        Assert.NotNull(ClusterMassTest.TwoSample([], [[1]]).Undefined);
        Assert.NotNull(ClusterMassTest.TwoSample([[1, 1], [1, 1]], [[1, 1]]).Undefined);
        Assert.NotNull(ClusterMassTest.Paired([[1]], [[2]]).Undefined);
        Assert.Equal(double.PositiveInfinity, Assert.Single(ClusterMassTest.TwoSample([[1], [1]], [[0], [0]]).Clusters).Mass);
        Assert.Throws<ArgumentException>(() => ClusterMassTest.TwoSample([[1, 2], [1]], [[1, 2]]));
        Assert.Throws<ArgumentException>(() => ClusterMassTest.Paired([[1, 2], [2, 3]], [[1, 2], [2, double.NaN]]));
    }

    private static double[] T(double[][] all, int set)
    {
        var t = new double[all[0].Length];
        for (var node = 0; node < t.Length; node++)
        {
            double[] a = [.. all.Where((_, i) => ((set >> i) & 1) == 1).Select(c => c[node])], b = [.. all.Where((_, i) => ((set >> i) & 1) == 0).Select(c => c[node])];
            double ma = a.Average(), mb = b.Average();
            var pooled = (a.Sum(x => (x - ma) * (x - ma)) + b.Sum(x => (x - mb) * (x - mb))) / (a.Length + b.Length - 2);
            t[node] = (ma - mb) / Math.Sqrt(pooled * ((1.0 / a.Length) + (1.0 / b.Length)));
        }

        return t;
    }

    private static List<double> Masses(double[] t, double mark)
    {
        var masses = new List<double>();
        for (var node = 0; node < t.Length; node++)
        {
            if (Math.Abs(t[node]) <= mark)
                continue;
            if (node > 0 && Math.Abs(t[node - 1]) > mark && Math.Sign(t[node - 1]) == Math.Sign(t[node]))
                masses[^1] += t[node];
            else
                masses.Add(t[node]);
        }

        return masses;
    }
}
