using SwingStudy.Domain.Units;

namespace SwingStudy.Domain.Tests.Units;

public class DigitsTests
{
    [Theory]
    [InlineData(35, 0)]
    [InlineData(3.5, 1)]
    [InlineData(0.35, 2)]
    [InlineData(-0.35, 2)]
    [InlineData(0.00035, 5)]
    [InlineData(1e-12, 6)]
    public void TwoDigitsOfTheUncertaintyAreLeft(double uncertainty, int decimals) => Assert.Equal(decimals, Digits.DecimalsFor(uncertainty, otherwise: 9));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void WithoutAnUncertaintyTheUsualDecimalsStand(double uncertainty) => Assert.Equal(3, Digits.DecimalsFor(uncertainty, otherwise: 3));
}
