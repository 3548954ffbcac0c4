using NodaTime;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Studies;

/// <summary>The sessions of a drawn player, with days when a first day is given.</summary>
internal static class SessionCalendar
{
    /// <summary>The sessions in order.</summary>
    /// <param name="protocol">The protocol, which says how many days must lie between phases.</param>
    /// <param name="player">What was drawn.</param>
    /// <param name="first">Day of the first session; null: no days are told.</param>
    /// <param name="everyDays">Days from one session to the next.</param>
    public static IReadOnlyList<CalendarSession> Of(Protocol protocol, DrawnPlayer player, LocalDate? first, int everyDays)
    {
        var sessions = new List<CalendarSession>();
        var day = first;
        for (var i = 0; i < player.Phases.Count; i++)
        {
            var phase = protocol.Phase(player.Phases[i]);
            if (i > 0)
                day = day?.PlusDays(player.Phases[i] == player.Phases[i - 1] ? everyDays : Math.Max(everyDays, phase?.DaysAfter ?? 0));
            sessions.Add(new(player.Participant, i + 1, day, player.Phases[i], phase?.Cue, phase?.MinimumSwings));
        }

        return sessions;
    }
}
