using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Studies;

/// <summary>Calendars as files: iCalendar (RFC 5545) for calendar programs, CSV (RFC 4180) for sheets.</summary>
internal static class CalendarFile
{
    private const int MostOctets = 75;

    /// <summary>The sessions as all-day events; each must have its day.</summary>
    /// <param name="study">Name of the study.</param>
    /// <param name="calendars">The sessions of each player, with the draw that gave them: a redraw makes other events.</param>
    public static string ICalendar(string study, IEnumerable<(Draw Draw, IReadOnlyList<CalendarSession> Sessions)> calendars)
    {
        var text = new StringBuilder();
        Line(text, "BEGIN:VCALENDAR");
        Line(text, "VERSION:2.0");
        Line(text, "PRODID:-//SwingStudy//protocol schedule//EN");
        Line(text, "CALSCALE:GREGORIAN");
        foreach (var (draw, session) in calendars.SelectMany(calendar => calendar.Sessions.Select(session => (calendar.Draw, session))))
        {
            var day = session.Day!.Value;
            Line(text, "BEGIN:VEVENT");
            Line(text, string.Create(CultureInfo.InvariantCulture, $"UID:draw-{draw.Number}-{session.Participant}-{session.Number}-{draw.At.ToUnixTimeMilliseconds()}@swingstudy.invalid"));
            Line(text, "DTSTAMP:" + draw.At.ToString("uuuuMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture));
            Line(text, "DTSTART;VALUE=DATE:" + Day(day));
            Line(text, "DTEND;VALUE=DATE:" + Day(day.PlusDays(1)));
            Line(text, "SUMMARY:" + Escaped(string.Create(CultureInfo.InvariantCulture, $"{session.Participant} session {session.Number}: {session.Phase}")));
            Line(text, "DESCRIPTION:" + Escaped(string.Create(CultureInfo.InvariantCulture, $"Study {study}. Cue: {session.Cue ?? "none"}. Swings that count: {session.Swings} or more.")));
            Line(text, "TRANSP:OPAQUE");
            Line(text, "END:VEVENT");
        }

        Line(text, "END:VCALENDAR");
        return text.ToString();
    }

    /// <summary>The sessions as comma-separated values with a heading row.</summary>
    public static string Csv(IEnumerable<CalendarSession> sessions)
    {
        var text = new StringBuilder("participant,session_number,day,phase,cue,minimum_swings\r\n");
        foreach (var session in sessions)
        {
            text.Append(CultureInfo.InvariantCulture, $"{session.Participant},{session.Number},{(session.Day is { } day ? LocalDatePattern.Iso.Format(day) : "")},")
                .Append(CultureInfo.InvariantCulture, $"{Quoted(session.Phase)},{Quoted(session.Cue ?? "")},{session.Swings}\r\n");
        }

        return text.ToString();
    }

    private static string Day(LocalDate day) => day.ToString("uuuuMMdd", CultureInfo.InvariantCulture);

    /// <summary>RFC 5545, 3.3.11.</summary>
    private static string Escaped(string text) => text.Replace("\\", @"\\", StringComparison.Ordinal).Replace(";", @"\;", StringComparison.Ordinal)
        .Replace(",", @"\,", StringComparison.Ordinal).ReplaceLineEndings(@"\n");

    /// <summary>RFC 5545, 3.1: a line of more than 75 octets is folded, never within a character.</summary>
    private static void Line(StringBuilder text, string line)
    {
        var octets = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > MostOctets)
            {
                text.Append("\r\n ");
                octets = 1;
            }

            text.Append(rune);
            octets += rune.Utf8SequenceLength;
        }

        text.Append("\r\n");
    }

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
