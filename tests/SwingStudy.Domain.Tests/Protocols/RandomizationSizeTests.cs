using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.Tests.Protocols;

public sealed class RandomizationSizeTests
{
    // With N points and at least a per phase there are N - 2a + 1 starts (Edgington and Onghena 2007, from memory; recomputed by counting).
    [Theory]
    [InlineData(20, 5, 11)]
    [InlineData(30, 5, 21)]
    public void AStartIsDrawnAmongTheSessionsThatLeaveEnoughOnBothSides(int points, int atLeast, double starts)
    {
        var counted = Enumerable.Range(1, points).Count(start => start - 1 >= atLeast && points - start + 1 >= atLeast);

        Assert.Equal(starts, counted);
        Assert.Equal(starts, RandomizationSize.PhaseStart(atLeast + 1, points - atLeast + 1));
    }

    [Theory]
    [InlineData(3, 6)]
    [InlineData(4, 24)]
    [InlineData(5, 120)]
    public void PlayersAreOrderedInKFactorialWays(int players, double orders) => Assert.Equal(orders, RandomizationSize.Order(players));

    [Fact]
    public void FiveAndFiveAlternatingSessionsGive252Orders() => Assert.Equal(252, RandomizationSize.Alternation(5));

    [Fact]
    public void StartsOfSeveralPlayersMultiply() => Assert.Equal(11 * 11 * 11, RandomizationSize.PhaseStart(6, 16, 3));
}
