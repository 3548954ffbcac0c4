using SwingStudy.Domain.Buffers;

namespace SwingStudy.Domain.Tests.Buffers;

public class RentedTests
{
    [Fact]
    public void GrowsAndKeepsWhatItHolds()
    {
        var rented = new Rented<(int, long)>(3);
        var before = rented.Span.Length;
        for (var i = 0; i < before; i++)
            rented.Span[i] = (i, -i);

        rented.Grow();

        Assert.True(before >= 3 && rented.Span.Length >= 2 * before);
        for (var i = 0; i < before; i++)
            Assert.Equal((i, -(long)i), rented.Span[i]);
        rented.Return();
    }

    [Fact]
    public void TwoNeverShareMemory()
    {
        Rented<double> one = new(1000), other = new(1000);
        one.Span.Fill(1);
        other.Span.Fill(2);

        Assert.False(one.Span.Contains(2));
        Assert.False(one.Span.Overlaps(other.Span));
        one.Return();
        other.Return();
    }

    [Fact]
    public void HoldsNothingOnceGivenBackAndMayThenGrow()
    {
        var rented = new Rented<int>(10);

        rented.Return();
        rented.Return();
        Assert.True(rented.Span.IsEmpty);

        rented.Grow();
        Assert.False(rented.Span.IsEmpty);
        rented.Return();
    }

    [Fact]
    public void MoreThanAnArrayHoldsIsToldAndNotWrappedRound() => Assert.Throws<OverflowException>(() => new Rented<long>(int.MaxValue));
}
