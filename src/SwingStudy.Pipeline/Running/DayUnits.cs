using System.Globalization;
using NodaTime;

namespace SwingStudy.Pipeline.Running;

/// <summary>Sessions gathered by the calendar day of the study's zone.</summary>
internal static class DayUnits
{
    /// <summary>One unit a day with sessions, named <c>20260907</c>; then what lies outside the sessions of each player; then what names nobody on other days.</summary>
    /// <param name="units">Units of all players, as <see cref="SessionTimes"/> gives them.</param>
    /// <param name="zone">The study's zone.</param>
    public static IEnumerable<WorkUnit> Of(IEnumerable<WorkUnit> units, DateTimeZone zone)
    {
        var all = units.ToList();
        var days = all.Where(unit => unit.Session is not null).GroupBy(unit => unit.Session!.StartedAt.InZone(zone).Date).OrderBy(day => day.Key)
            .Select(day => new WorkUnit(day.Key.ToString("yyyyMMdd", CultureInfo.InvariantCulture), null, null, [Range(day.Key, zone)])
            {
                Sessions = [.. day.OrderBy(unit => unit.Name, StringComparer.Ordinal)],
            }).ToList();
        var outside = new List<TimeRange>();
        var free = long.MinValue;
        foreach (var range in days.Select(day => day.Times[0]))
        {
            outside.Add(new TimeRange(free, range.FromMillis));
            free = range.ToMillis;
        }

        outside.Add(new TimeRange(free, long.MaxValue));
        return
        [
            .. days, .. all.Where(unit => unit.Session is null),
            new WorkUnit(WorkUnit.Outside, null, null, [.. outside.Where(range => range.FromMillis < range.ToMillis)]),
        ];
    }

    private static TimeRange Range(LocalDate day, DateTimeZone zone) => new(
        zone.AtStartOfDay(day).ToInstant().ToUnixTimeMilliseconds(), zone.AtStartOfDay(day.PlusDays(1)).ToInstant().ToUnixTimeMilliseconds());
}
