using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

public class ValueDisplayTests
{
    private static readonly ValueDisplay Speed = new(Some.Dictionary["club_head_speed"]);

    [Fact]
    public void ValuesAreShownInTheDisplayUnitWithATrueMinus()
    {
        Assert.Equal("100.0 mph", Speed.TextOf(44.704));
        Assert.Equal("+1.0 mph", Speed.TextOfDifference(0.44704));
        Assert.Equal("−1.0 mph", Speed.TextOfDifference(-0.44704));
    }

    [Fact]
    public void ADifferenceThatRoundsToZeroHasNoSign()
    {
        Assert.Equal("0.0 mph", Speed.TextOfDifference(0.001));
        Assert.Equal("0.0 mph", Speed.TextOfDifference(-0.001));
    }

    [Theory]
    [InlineData(0.3, 2.7, 7)]
    [InlineData(-4.1, 9.7, 7)]
    [InlineData(80, 104, 6)]
    public void StepsAreRoundAndLieWithinTheAxis(double low, double high, int most)
    {
        var steps = Sheet.Steps(low, high, most);

        Assert.InRange(steps.Length, 2, most + 1);
        Assert.All(steps, step => Assert.InRange(step, low, high));
        Assert.Single(steps.Zip(steps.Skip(1), (a, b) => Math.Round(b - a, 9)).Distinct());
    }
}
