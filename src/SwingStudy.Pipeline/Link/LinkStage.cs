using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;

namespace SwingStudy.Pipeline.Link;

/// <summary>Assigns captures to swings.</summary>
/// <remarks>
/// The sessions of one day are parted into stays at the station: sessions of players who take turns are one stay. In each stay the clocks of all devices
/// are modelled against the most precise one, their records are joined to moments, and a moment that two devices saw, or the one that gives the session
/// its swings, is a swing. Which device gives the swings (the first of the preferred sources) and which gives the time are two questions.
/// Swings are numbered by time within the session. A file that comes later and holds a swing in between shifts the numbers after it: what must name a
/// swing for good names one of its captures.
/// </remarks>
internal sealed class LinkStage : Stage<LinkSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "link",
        Title = "Link",
        Summary = "Assigns captures to sessions by time, models the clocks of devices, and joins what several devices recorded of one swing.",
        Unit = UnitOfWork.Day,
        Inputs = [new("captures", Slice.SameTime)],
        Outputs = ["links", "clocks"],
        SeesSession = true,
        Decisions = ["match"],
        CodeVersion = "4",
    };

    protected override LinkSettings SettingsOf(StudySetup setup) => LinkSettings.Of(setup);

    protected override IReadOnlyList<string> ColumnsOf(string table, LinkSettings settings) =>
        ["capture_id", "source", "device", "participant", "recorded_at", "struck_at", "purpose", "original_sha256", "original_row", "revision_of"];

    protected override IReadOnlyList<RowSet> Run(LinkSettings settings, StageInput input)
    {
        var (current, replaced) = Capture.Read(input.Rows("captures"));
        List<SwingMatch> matches = [.. input.Decisions("match").Select(DecisionSubject.Of).Where(subject => subject.Capture is not null)
            .Select(subject => new SwingMatch(subject.Capture!, subject.Swing, subject.With))];
        List<PlayerSession> sessions = [.. input.Sessions.Select(PlayerSession.Of)];
        var day = sessions.Count > 0
            ? DayLinks.Of(sessions, current, matches, settings)
            : new DayLinks([.. current.Select(capture => new CaptureLink(capture, LinkMethods.NoSession))], []);
        var old = replaced.Select(capture => new CaptureLink(capture, LinkMethods.Replaced)
        {
            Session = sessions.Find(session => session.Participant == capture.Participant && session.Covers(capture.AtMillis))?.Id,
        });
        return [LinkRows.Of(input.Output("links"), [.. day.Links, .. old]), LinkRows.Of(input.Output("clocks"), day.Clocks)];
    }
}
