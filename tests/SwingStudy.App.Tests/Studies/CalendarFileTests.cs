using System.Text;
using Ical.Net;
using NodaTime;
using SwingStudy.App.Studies;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Tests.Studies;

/// <summary>Calendars are read back by Ical.Net, an implementation of RFC 5545 that is not ours.</summary>
public sealed class CalendarFileTests
{
    private static readonly Instant Drawn = Instant.FromUtc(2026, 9, 1, 12, 30, 5);

    private static readonly CalendarSession[] Sessions =
    [
        new("P01", 1, new LocalDate(2026, 12, 31), "baseline", null, 12),
        new("P01", 2, new LocalDate(2027, 2, 28), "with-cue", "press earlier, then hold; \\ as told \"ä\" " + new string('ö', 60), 12),
    ];

    [Fact]
    public void AnotherProgramReadsEveryDayAndText()
    {
        var calendar = Calendar.Load(Text())!;

        Assert.Equal(["P01 session 1: baseline", "P01 session 2: with-cue"], calendar.Events.Select(day => day.Summary));
        Assert.Equal<DateOnly?>([new DateOnly(2026, 12, 31), new DateOnly(2027, 2, 28)], calendar.Events.Select(day => day.DtStart?.Date));
        Assert.Equal<DateOnly?>([new DateOnly(2027, 1, 1), new DateOnly(2027, 3, 1)], calendar.Events.Select(day => day.DtEnd?.Date));
        Assert.All(calendar.Events, day => Assert.True(day.IsAllDay));
        Assert.Equal(2, calendar.Events.Select(day => day.Uid).Distinct().Count());
        Assert.Equal($"Study Autumn, by the sea. Cue: {Sessions[1].Cue}. Swings that count: 12 or more.", calendar.Events[1]?.Description);
    }

    // RFC 5545, 3.1: lines end with CRLF and hold at most 75 octets before it.
    [Fact]
    public void LinesAreFoldedAtSeventyFiveOctets()
    {
        var text = Text();

        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.All(text.Split("\r\n"), line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75, line));
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
    }

    // RFC 4180: a field with a comma or a quote stands in quotes, and a quote in it is doubled.
    [Fact]
    public void ASheetReadsTheSameSessions() => Assert.Equal(
        "participant,session_number,day,phase,cue,minimum_swings\r\nP01,1,2026-12-31,baseline,,12\r\nP01,2,,\"with, \"\"x\"\"\",,\r\n",
        CalendarFile.Csv([Sessions[0], new("P01", 2, null, "with, \"x\"", null, null)]));

    private static string Text() => CalendarFile.ICalendar("Autumn, by the sea", [(Draw, Sessions)]);

    private static Draw Draw { get; } = new()
    {
        Number = 1, ProtocolVersion = 1, Kind = Randomization.PhaseStart, Seed = 1, IsJoint = false, Assignments = 3, At = Drawn, Actor = "coach", Players = [],
    };
}
