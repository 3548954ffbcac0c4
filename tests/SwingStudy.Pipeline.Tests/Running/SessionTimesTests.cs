using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Running;

public sealed class SessionTimesTests
{
    private static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    [Fact]
    public void ASessionLastsUntilTheNextOneBegins()
    {
        var units = Units(At(9, 0), At(14, 0));
        Assert.Equal([new TimeRange(Millis(At(8, 45)), Millis(At(13, 45)))], units[0].Times);
        Assert.Equal(Millis(At(13, 45)), units[1].Times[0].FromMillis);
    }

    [Fact]
    public void SessionsCloseTogetherMeetInTheMiddle()
    {
        var units = Units(At(9, 0), At(9, 20));
        Assert.Equal(Millis(At(9, 10)), units[0].Times[0].ToMillis);
        Assert.Equal(Millis(At(9, 10)), units[1].Times[0].FromMillis);
    }

    [Fact]
    public void TheDayEndsAtLocalMidnightAlsoWhenSummerTimeEnds()
    {
        // In Lisbon summer time ended on 2026-10-25: that day has 25 hours (tz database).
        var start = new LocalDateTime(2026, 10, 25, 10, 0).InZoneStrictly(Lisbon).ToInstant();
        var units = Units(start);
        Assert.Equal(Millis(Instant.FromUtc(2026, 10, 26, 0, 0)), units[0].Times[0].ToMillis);
    }

    [Fact]
    public void EveryMomentBelongsToExactlyOneUnit()
    {
        var units = Units(At(9, 0), At(9, 20), At(14, 0), At(9, 0) + Duration.FromDays(3));
        for (var time = At(0, 0) - Duration.FromDays(1); time < At(0, 0) + Duration.FromDays(5); time += Duration.FromMinutes(5))
            Assert.Single(units, unit => unit.Owns("P01", Millis(time)));
    }

    private static IReadOnlyList<WorkUnit> Units(params Instant[] starts) => SessionTimes.Units("P01", starts.Select((start, i) => new SessionRecord
    {
        Id = $"P01-{i}",
        Participant = new ParticipantId("P01"),
        StartedAt = start,
        StartedLocal = start.InZone(Lisbon).LocalDateTime,
    }), Lisbon);

    private static Instant At(int hour, int minute) => Instant.FromUtc(2026, 9, 7, hour, minute);

    private static long Millis(Instant instant) => instant.ToUnixTimeMilliseconds();
}
