using SwingStudy.Domain.Tables;

namespace SwingStudy.Domain.Tests.Tables;

public class DistinctNumbersTests
{
    [Fact]
    public void PlacesFollowTheOrderOfAppearance()
    {
        var distinct = new DistinctNumbers();
        distinct.Begin(10);
        Assert.Equal([0, 1, 0, 2, 1], Array.ConvertAll([7.5, 1, 7.5, -3, 1], distinct.PlaceOf));
        Assert.Equal([7.5, 1, -3], distinct.Values.ToArray());
    }

    [Fact]
    public void NumbersAreToldApartBitByBit()
    {
        var distinct = new DistinctNumbers();
        distinct.Begin(10);
        Assert.Equal([0, 1, 2, 1], Array.ConvertAll([0.1 + 0.2, 0.0, -0.0, 0.0], distinct.PlaceOf));
        Assert.Equal(3, distinct.PlaceOf(0.3));
    }

    [Fact]
    public void MoreThanAreWorthItAreRefused()
    {
        var distinct = new DistinctNumbers();
        distinct.Begin(2);
        Assert.Equal([0, 1, -1, 1], Array.ConvertAll([1.0, 2, 3, 2], distinct.PlaceOf));
    }

    [Fact]
    public void ALargeColumnAndThenASmallOneShareTheObject()
    {
        var distinct = new DistinctNumbers();
        foreach (var count in (int[])[20_000, 3, 5_000])
        {
            distinct.Begin(count);
            for (var i = 0; i < count; i++)
                Assert.Equal(i, distinct.PlaceOf(i * 0.37));
            for (var i = 0; i < count; i++)
                Assert.Equal(i, distinct.PlaceOf(i * 0.37));
            Assert.Equal(count, distinct.Count);
        }
    }
}
