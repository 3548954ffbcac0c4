using SwingStudy.Statistics.Change;

namespace SwingStudy.Statistics.Tests.Change;

public class MeanSquareSumTests
{
    [Fact]
    public void DegreesOfFreedomAreSatterthwaites()
    {
        // By hand: (4 + 1)²/(4²/4 + 1²/1) = 5, the number of degrees of freedom of both together, as variances in the ratio of theirs must give.
        var sum = new MeanSquareSum(new MeanSquareTerm(4, 4), new MeanSquareTerm(1, 1));
        Assert.Equal(5, sum.Value, 12);
        Assert.Equal(5, sum.DegreesOfFreedom!.Value, 12);
    }

    [Fact]
    public void OneTermKeepsItsOwnAndATermWithoutDegreesOfFreedomCountsForNothing() =>
        Assert.Equal(7, new MeanSquareSum(new MeanSquareTerm(3, 7), new MeanSquareTerm(0, 0)).DegreesOfFreedom!.Value, 12);

    [Fact]
    public void WhatIsTakenOffLowersTheSumAndItsDegreesOfFreedom()
    {
        // By hand: (4 − 1)²/(16/8 + 1/10) = 9/2.1.
        var sum = new MeanSquareSum(new MeanSquareTerm(4, 8), new MeanSquareTerm(-1, 10));
        Assert.Equal(3, sum.Value, 12);
        Assert.Equal(9 / 2.1, sum.DegreesOfFreedom!.Value, 12);
    }

    [Fact]
    public void BelowOneDegreeOfFreedomNothingIsTakenOff()
    {
        // (4 − 3.5)²/(16/8 + 12.25/10) = 0.08: 4 with 8 degrees of freedom stays.
        var sum = new MeanSquareSum(new MeanSquareTerm(4, 8), new MeanSquareTerm(-3.5, 10));
        Assert.Equal(4, sum.Value, 12);
        Assert.Equal(8, sum.DegreesOfFreedom!.Value, 12);
    }

    [Fact]
    public void NothingHasNoDegreesOfFreedom() => Assert.Null(new MeanSquareSum(new MeanSquareTerm(0, 3)).DegreesOfFreedom);
}
