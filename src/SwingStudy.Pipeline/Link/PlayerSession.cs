using SwingStudy.Pipeline.Running;

namespace SwingStudy.Pipeline.Link;

/// <summary>What linking needs to know of one session.</summary>
/// <param name="Id">The session.</param>
/// <param name="Participant">Its player.</param>
/// <param name="Site">Where; null when unknown.</param>
/// <param name="StartMillis">Noted start.</param>
/// <param name="Times">The time that belongs to it.</param>
internal sealed record PlayerSession(string Id, string Participant, string? Site, long StartMillis, TimeRange Times)
{
    /// <summary>The session of a unit of work.</summary>
    public static PlayerSession Of(WorkUnit unit) =>
        new(unit.Name, unit.Participant!, unit.Session!.Site, unit.Session.StartedAt.ToUnixTimeMilliseconds(), unit.Times[0]);

    /// <summary>Whether a time belongs to it.</summary>
    public bool Covers(long millis) => Times.Contains(millis);

    /// <summary>Whether both may have been at one place.</summary>
    public bool MayShareSite(PlayerSession other) => Site is null || other.Site is null || Site == other.Site;
}
