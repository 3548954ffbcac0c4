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
    [InlineData(-0.0, 2, "0.00")]
    [InlineData(-0.004, 2, "0.00")]
    [InlineData(-0.005, 2, "−0.01")]
    [InlineData(-1234.5, 0, "−1235")]
    public void ANumberHasATrueMinusAndZeroNone(double value, int decimals, string text) => Assert.Equal(text, ValueDisplay.Number(value, decimals));

    [Theory]
    [InlineData(1.6, 1)]
    [InlineData(0.16, 2)]
    [InlineData(16, 0)]
    [InlineData(0.025, 3)]
    [InlineData(double.NaN, 1)]
    public void TwoDigitsOfTheUncertaintyAreShown(double uncertainty, int decimals) => Assert.Equal(decimals, Speed.DecimalsFor(uncertainty));

    [Theory]
    [InlineData("4.6", "°", "4.6°")]
    [InlineData("4.6", "%", "4.6 %")]
    [InlineData("4.6", "", "4.6")]
    [InlineData("", "mph", "")]
    public void AUnitStandsBesideItsNumber(string number, string symbol, string text) => Assert.Equal(text, ValueDisplay.WithUnit(number, symbol));

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
