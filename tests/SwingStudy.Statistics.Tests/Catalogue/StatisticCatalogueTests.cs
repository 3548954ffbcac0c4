using System.Text.RegularExpressions;
using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.Statistics.Tests.Catalogue;

public partial class StatisticCatalogueTests
{
    [Fact]
    public void EveryMethodWordIsKebabCaseAndUnique()
    {
        Assert.All(StatisticCatalogue.All, d => Assert.Matches(KebabCase(), d.Name));
        Assert.Equal(StatisticCatalogue.All.Count, StatisticCatalogue.All.Select(d => d.Name).Distinct().Count());
    }

    [Fact]
    public void EveryStatisticCitesASourceThatExists() =>
        Assert.All(StatisticCatalogue.All, d =>
        {
            Assert.NotEmpty(d.CitationKeys);
            Assert.All(d.CitationKeys, key => Assert.NotEmpty(Citations.Get(key)));
        });

    [Fact]
    public void EveryNullValueLiesWithinTheBounds() =>
        Assert.All(StatisticCatalogue.All, d =>
        {
            Assert.True(d.LowerBound < d.UpperBound, d.Name);
            if (d.NullValue is { } none)
                Assert.InRange(none, d.LowerBound, d.UpperBound);
        });

    [Fact]
    public void AStatisticIsFoundByItsMethodWord()
    {
        Assert.All(StatisticCatalogue.All, d => Assert.Same(d, StatisticCatalogue.Find(d.Name)));
        Assert.Null(StatisticCatalogue.Find("no-such-statistic"));
    }

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$")]
    private static partial Regex KebabCase();
}
