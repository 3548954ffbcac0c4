using NodaTime;
using NodaTime.Text;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Studies;

/// <summary>Local moments as people type them.</summary>
internal static class Moments
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>Reads <c>2026-09-07 10:30</c> in a zone; where the clocks go back, the earlier of two moments is meant.</summary>
    public static Outcome<Instant> Read(string text, string option, string zone)
    {
        if (!Minute.Parse(text).TryGetValue(default, out var local))
            return new Problem("time-unreadable", new Place(option), $"'{text}'", "a local date and time", $"For instance: {option} \"2026-09-07 10:30\".");
        var mapped = DateTimeZoneProviders.Tzdb[zone].MapLocal(local);
        return mapped.Count > 0
            ? mapped.First().ToInstant()
            : new Problem("local-time-unclear", new Place(option), $"{text} does not occur in {zone}", "a local time that occurs", "The clocks go forward in that hour; give a time just before or after it.");
    }
}
