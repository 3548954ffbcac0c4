using System.Globalization;
using CsCheck;
using NodaTime;
using SwingStudy.Ingestion.Mapping.Times;

namespace SwingStudy.Ingestion.Tests.Mapping;

public sealed class TimeTests
{
    private static readonly Gen<DateTime> AnyTime = Gen.DateTime[new DateTime(1971, 1, 1), new DateTime(2098, 12, 31)];

    [Fact]
    public void APatternReadsWhatTheFrameworkWrites() => Gen.Select(AnyTime, Gen.OneOf(
        "dd.MM.yyyy HH:mm:ss", "MM/dd/yyyy hh:mm:ss tt", "yyyy-MM-dd HH:mm:ss.fff", "yyyyMMddHHmmss", "d.M.yyyy H:m:s", "dd/MM/yyyy HH:mm")).Sample((time, pattern) =>
    {
        var text = time.ToString(pattern, CultureInfo.InvariantCulture);
        Assert.True(TimePattern.TryCompile(pattern, out var compiled, out var fault), fault);
        Assert.True(compiled.TryRead(text, out var millis), text);
        var expected = DateTime.ParseExact(text, pattern, CultureInfo.InvariantCulture);
        Assert.Equal(new DateTimeOffset(expected, TimeSpan.Zero).ToUnixTimeMilliseconds(), millis);
    });

    [Theory]
    [InlineData("dd.MM.yyyy", "31.04.2026")]
    [InlineData("dd.MM.yyyy", "29.02.2025")]
    [InlineData("dd.MM.yyyy HH:mm", "01.04.2026 24:00")]
    [InlineData("dd.MM.yyyy HH:mm", "01.04.2026 10:60")]
    [InlineData("dd.MM.yyyy HH:mm", "01.04.2026 10:00 ")]
    [InlineData("MM/dd/yyyy hh:mm tt", "04/01/2026 13:00 PM")]
    [InlineData("MM/dd/yyyy hh:mm tt", "04/01/2026 00:10 AM")]
    [InlineData("yyyyMMdd", "2026041")]
    public void ATimeThatCannotBeIsRefused(string pattern, string text)
    {
        Assert.True(TimePattern.TryCompile(pattern, out var compiled, out _));
        Assert.False(compiled.TryRead(text, out _));
    }

    [Theory]
    [InlineData("04/01/2026 12:05 AM", "2026-04-01T00:05:00")]
    [InlineData("04/01/2026 12:05 PM", "2026-04-01T12:05:00")]
    [InlineData("04/01/2026 1:05 p.m.", "2026-04-01T13:05:00")]
    public void ATwelveHourClockTellsNoonFromMidnight(string text, string expected)
    {
        Assert.True(TimePattern.TryCompile("MM/dd/yyyy hh:mm tt", out var compiled, out _));
        Assert.True(compiled.TryRead(text, out var millis));
        Assert.Equal(expected, DateTimeOffset.FromUnixTimeMilliseconds(millis).ToString("s", CultureInfo.InvariantCulture));
    }

    /// <summary>Names of months as the Unicode common locale data lists them, whole and cut.</summary>
    [Theory]
    [InlineData("dd MMM yyyy", "7 Sep 2026", "2026-09-07")]
    [InlineData("dd. MMM yyyy", "3. März 2026", "2026-03-03")]
    [InlineData("dd MMM yyyy", "21 août 2026", "2026-08-21")]
    [InlineData("dd MMM yyyy", "9 sept. 2026", "2026-09-09")]
    [InlineData("dd 'de' MMM 'de' yyyy", "1 de enero de 2026", "2026-01-01")]
    [InlineData("E, MMM dd, yyyy", "Thursday, September 17, 2026", "2026-09-17")]
    [InlineData("dd MMM yyyy", "5  maj\u00A02026", "2026-05-05")]
    public void AMonthMayStandByItsName(string pattern, string text, string expected)
    {
        Assert.True(TimePattern.TryCompile(pattern, out var compiled, out var fault), fault);
        Assert.True(compiled.TryRead(text, out var millis));
        Assert.Equal(expected, DateTimeOffset.FromUnixTimeMilliseconds(millis).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("dd MMM yyyy", "7 Ju 2026")]
    [InlineData("dd MMM yyyy", "7 Sepp 2026")]
    [InlineData("dd MMM yyyy", "31 Sep 2026")]
    [InlineData("dd.MM.yyyy HH:mm:ss z", "17.09.2026 14:05:07")]
    [InlineData("dd.MM.yyyy HH:mm:ss z", "17.09.2026 14:05:07 +2")]
    public void ANameOrAnOffsetThatIsNoneIsRefused(string pattern, string text)
    {
        Assert.True(TimePattern.TryCompile(pattern, out var compiled, out _));
        Assert.False(compiled.TryRead(text, out _));
    }

    [Theory]
    [InlineData("dd.MM.yyyy HH:mm:ss z", "17.09.2026 14:05:07 +02:00")]
    [InlineData("dd.MM.yyyy HH:mm:ss z", "17.09.2026 12:05:07 UTC")]
    [InlineData("MM/dd/yyyy hh:mm:ss tt z", "09/17/2026 08:05:07 AM -0400")]
    [InlineData("yyyyMMddTHHmmssz", "20260917T120507Z")]
    public void AnOffsetInTheTextMakesTheTimeUtcAndNeedsNoZone(string pattern, string text)
    {
        Assert.True(TimeFormat.TryCompile(pattern, out var format, out var fault), fault);
        Assert.False(format.NeedsZone);
        Assert.True(format.TryRead(text, out var millis, out var isUtc));
        Assert.True(isUtc);
        Assert.Equal(new DateTimeOffset(2026, 9, 17, 12, 5, 7, TimeSpan.Zero).ToUnixTimeMilliseconds(), millis);
    }

    [Theory]
    [InlineData("dd.MM.yyyy hh:mm")]
    [InlineData("dd.MM HH:mm")]
    [InlineData("HH:mm:ss")]
    [InlineData("dd.MM.yyyy HH:mm HH")]
    public void APatternThatCannotTellATimeIsRefused(string pattern) => Assert.False(TimePattern.TryCompile(pattern, out _, out _));

    [Theory]
    [InlineData("2026-03-01T10:00:00Z", 0, true)]
    [InlineData("2026-03-01 11:00:00+01:00", 0, true)]
    [InlineData("2026-03-01T05:30:00.000-0430", 0, true)]
    [InlineData("2026-03-01T10:00", 0, false)]
    [InlineData("2026-03-01T10:00:00,250", 250, false)]
    public void AnIsoTextSaysWhetherItCarriesAnOffset(string text, long more, bool isUtc)
    {
        Assert.True(IsoTime.TryRead(text, out var millis, out var carriesOffset));
        Assert.Equal(isUtc, carriesOffset);
        Assert.Equal(Instant.FromUtc(2026, 3, 1, 10, 0).ToUnixTimeMilliseconds() + more, millis);
    }

    // 45937 is 2025-10-07 in the 1900 epoch of workbooks (ECMA-376 part 1, 18.17.4.1: serial 1 is 1900-01-01, and a 29th of February 1900 counts).
    [Theory]
    [InlineData(45937, "2025-10-07T00:00:00")]
    [InlineData(45937.4618055555555556, "2025-10-07T11:05:00")]
    [InlineData(61, "1900-03-01T00:00:00")]
    public void ASerialDayIsADayOfTheWorkbookEpoch(double serial, string expected)
    {
        Assert.True(ExcelSerial.TryToLocalMillis(serial, out var millis));
        Assert.Equal(expected, DateTimeOffset.FromUnixTimeMilliseconds(millis).ToString("s", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void OneDayAboveTwelveDecidesTheOrderOfDayAndMonthForTheWholeFile()
    {
        var detector = new TimeFormatDetector();
        detector.Observe("03/04/2026 10:00:00");
        Assert.Equal(2, detector.Fitting.Count);
        detector.Observe("13/04/2026 10:00:00");
        Assert.Equal("dd/MM/yyyy HH:mm:ss", Assert.Single(detector.Fitting).Text);
    }

    [Fact]
    public void DaysThatReadTheSameEitherWayDecideNothingAndDisturbNothing()
    {
        var detector = new TimeFormatDetector();
        detector.Observe("04/04/2026");
        Assert.Single(detector.Fitting);
    }

    [Fact]
    public void UtcTimesSurviveTheWayThroughAnyZone() => Gen.Select(
        Gen.Long[0, 4_000_000_000_000], Gen.OneOf("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "UTC")).Sample((utc, name) =>
    {
        var zone = DateTimeZoneProviders.Tzdb[name];
        var local = Instant.FromUnixTimeMilliseconds(utc).InZone(zone).LocalDateTime;
        if (zone.MapLocal(local).Count != 1)
            return;
        var millis = new[] { local.InUtc().ToInstant().ToUnixTimeMilliseconds() };
        var resolved = new ZoneClock(zone).Resolve(millis, [], null);
        Assert.Empty(resolved.Skipped);
        Assert.Equal(utc, millis[0]);
    });
}
