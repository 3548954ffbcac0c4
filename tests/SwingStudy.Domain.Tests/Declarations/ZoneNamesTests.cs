using NodaTime;
using SwingStudy.Domain.Declarations;

namespace SwingStudy.Domain.Tests.Declarations;

public class ZoneNamesTests
{
    [Fact]
    public void UtcIsTheZoneThatTheDatabaseAlsoNames()
    {
        var moment = Instant.FromUtc(2024, 7, 1, 12, 0);
        Assert.Equal("UTC", ZoneNames.Find("UTC")?.Id);
        Assert.Equal(DateTimeZoneProviders.Tzdb["UTC"].GetUtcOffset(moment), ZoneNames.Find("UTC")?.GetUtcOffset(moment));
    }

    [Fact]
    public void OtherZonesAreThoseOfTheDatabase() => Assert.Same(DateTimeZoneProviders.Tzdb["Europe/Lisbon"], ZoneNames.Find("Europe/Lisbon"));

    [Theory]
    [InlineData("utc")]
    [InlineData("Europe/Lisboa")]
    public void AnUnknownNameIsNone(string name) => Assert.Null(ZoneNames.Find(name));
}
