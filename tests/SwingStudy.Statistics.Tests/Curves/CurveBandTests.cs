using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Curves;

public class CurveBandTests
{
    [Fact]
    public void ASimultaneousBandIsWiderThanAPointwiseOne()
    {
        var band = CurveBand.Of(CurveTestTests.Made(20, 50, 3), new Xoshiro256(1));
        Assert.True(band.SimultaneousFactor > band.PointwiseFactor);
        Near.Equal(2.093024054, band.PointwiseFactor, 1e-8); // t(0.975, 19), from tables
        Assert.Equal(50, band.HalfWidth(band.PointwiseFactor!.Value).Count);
    }

    [Fact]
    public void ThreadsUnitAndOffsetDoNotChangeTheFactor()
    {
        var curves = CurveTestTests.Made(10, 30, 3);
        var one = CurveBand.Of(curves, new Xoshiro256(1), threads: 1);
        Assert.Equal(one.SimultaneousFactor, CurveBand.Of(curves, new Xoshiro256(1), threads: 2).SimultaneousFactor);
        var moved = CurveBand.Of([.. curves.Select(c => Some.Plus(Some.Times(c, 100), 1e6))], new Xoshiro256(1));
        Near.Equal(one.SimultaneousFactor, moved.SimultaneousFactor, 1e-6);
    }

    [Fact]
    public void TheSimultaneousBandHoldsTheWholeTrueMeanAboutAsOftenAsItSays()
    {
        var chance = new Xoshiro256(9);
        var held = 0;
        for (var i = 0; i < 150; i++)
        {
            var band = CurveBand.Of(CurveTestTests.Made(25, 20, chance.NextBits()), chance.Split($"{i}"), resamples: 400);
            var half = band.HalfWidth(band.SimultaneousFactor!.Value);
            held += Enumerable.Range(0, 20).All(node => Math.Abs(band.Mean[node] - Math.Sin(Math.PI * node / 20)) <= half[node]) ? 1 : 0;
        }

        Assert.InRange(held / 150.0, 0.88, 1);
    }

    [Fact]
    public void TooFewCurvesGiveNoBandAndSayWhy()
    {
        Assert.NotNull(CurveBand.Of([], new Xoshiro256(1)).Undefined);
        Assert.NotNull(CurveBand.Of([[1, 2, 3]], new Xoshiro256(1)).Undefined);
        Assert.Null(CurveBand.Of([[1, 2], [1, 2], [1, 2]], new Xoshiro256(1)).SimultaneousFactor);
        Assert.Throws<ArgumentException>(() => CurveBand.Of([[1, 2], [1]], new Xoshiro256(1)));
    }
}
