using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Resampling;

public class CombinedPTests
{
    [Fact]
    public void OnePStaysWhatItIs() => Near.Equal(0.037, CombinedP.Additive([0.037]));

    [Fact]
    public void TwoPsFollowTheTriangularDistribution()
    {
        Near.Equal(0.3 * 0.3 / 2, CombinedP.Additive([0.1, 0.2]));
        Near.Equal(1 - (0.5 * 0.5 / 2), CombinedP.Additive([0.7, 0.8]));
    }

    [Fact]
    public void UniformPsCombineToAUniformP()
    {
        var chance = new Xoshiro256(6);
        var below = 0;
        var p = new double[7];
        for (var i = 0; i < 20_000; i++)
        {
            for (var j = 0; j < p.Length; j++)
                p[j] = chance.NextUnit();
            below += CombinedP.Additive(p) <= 0.05 ? 1 : 0;
        }

        Assert.InRange(below / 20_000.0, 0.05 - 0.0065, 0.05 + 0.0065);
    }

    [Fact]
    public void NoPOrOneOutsideTheRangeIsRefused()
    {
        Assert.Throws<ArgumentException>(() => CombinedP.Additive([]));
        Assert.Throws<ArgumentException>(() => CombinedP.Additive([1.1]));
        Assert.Throws<ArgumentException>(() => CombinedP.Additive([double.NaN]));
    }
}
