using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;

namespace SwingStudy.Pipeline.Link;

/// <summary>Assigns captures to swings.</summary>
/// <remarks>
/// The first of the preferred sources that recorded the session gives its swings, numbered by time. Every other source of swings is matched to them
/// by <see cref="ClockMatch"/>; moments fall into windows of time around swings. Clocks are taken to differ by a constant within a session; drift and
/// restarts within a session are not modelled here.
/// </remarks>
internal sealed class LinkStage : Stage<LinkSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "link",
        Title = "Link",
        Summary = "Assigns captures to sessions by time and joins what several devices recorded of one swing.",
        Unit = UnitOfWork.Session,
        Inputs = [new("captures", Slice.SameTime)],
        Outputs = ["links"],
        SeesSession = true,
        Decisions = ["match"],
        CodeVersion = "1",
    };

    protected override LinkSettings SettingsOf(StudySetup setup) => LinkSettings.Of(setup);

    protected override IReadOnlyList<string> ColumnsOf(string table, LinkSettings settings) =>
        ["capture_id", "source", "participant", "struck_at", "original_sha256", "original_row", "revision_of"];

    protected override IReadOnlyList<RowSet> Run(LinkSettings settings, StageInput input)
    {
        var (current, replaced) = Capture.Read(input.Rows("captures"));
        List<SwingMatch> matches = [.. input.Decisions("match").Select(DecisionSubject.Of).Where(subject => subject.Capture is not null)
            .Select(subject => new SwingMatch(subject.Capture!, subject.Swing))];
        IReadOnlyList<CaptureLink> links = input.Session is { } session
            ? SessionLinks.Of(session.Id, current, matches, settings)
            : [.. current.Select(capture => new CaptureLink(capture, null, LinkMethods.NoSession, null, null))];
        return [Rows(input.Output("links"), [.. links, .. replaced.Select(capture => new CaptureLink(capture, null, LinkMethods.Replaced, null, null))])];
    }

    private static RowSet Rows(TableDefinition table, IReadOnlyList<CaptureLink> links) => new(table,
    [
        new TextColumn([.. links.Select(link => link.Capture.Id)]),
        new TextColumn([.. links.Select(link => link.Swing)]),
        new TextColumn([.. links.Select(link => link.Capture.Participant)]),
        new TextColumn([.. links.Select(link => link.Method)]),
        new NumberColumn([.. links.Select(link => link.ResidualSeconds ?? double.NaN)]),
        new NumberColumn([.. links.Select(link => link.Confidence ?? double.NaN)]),
    ]);
}
