using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>A real study folder that is gone after the test.</summary>
internal sealed class TestStudy : IDisposable
{
    private readonly Dictionary<string, int> _ordinals = [];

    public TestStudy(Protocol? protocol = null)
    {
        Setup = Some.Setup(new StudyFolder(Directory.CreateTempSubdirectory("study-").FullName), protocol);
        Registry = new StudyRegistry(Setup.Folder);
        Tables = new TableStore(Setup.Folder);
    }

    public StudySetup Setup { get; set; }

    public StudyRegistry Registry { get; }

    public TableStore Tables { get; }

    /// <summary>Adds a session that starts a number of days after <see cref="Some.Morning"/>.</summary>
    public SessionRecord Session(string participant, int day, string phase, string club = "iron")
    {
        var start = Some.Morning + Duration.FromDays(day);
        var local = start.InZone(DateTimeZoneProviders.Tzdb[Setup.Declaration.Zone]).LocalDateTime;
        var session = new SessionRecord
        {
            Id = new SessionId(new ParticipantId(participant), local.Date.ToDateOnly(), 1).ToString(),
            Participant = new ParticipantId(participant),
            StartedAt = start,
            StartedLocal = local,
            Phase = phase,
            Club = club,
        };
        Registry.Act("tester", "session.add", act =>
        {
            act.Save(new Participant(session.Participant, "enrolled", Some.Morning));
            act.Save(session);
            return "{}";
        });
        return session;
    }

    /// <summary>Adds one file with the swings of one session, half a minute apart, and the session.</summary>
    public SessionRecord Swings(string participant, int day, string phase, params double[] clubSpeeds)
    {
        var session = Session(participant, day, phase);
        Captures(clubSpeeds.Select((speed, i) => new CaptureRow("strike", i + 1, session.StartedAt + Duration.FromSeconds(30 * (i + 1)))
        {
            Participant = participant,
            Original = $"{participant}-day{day}-{_ordinals[participant] = _ordinals.GetValueOrDefault(participant) + 1}",
            Values = new() { ["club_head_speed"] = speed, ["ball_speed"] = 1.4 * speed, ["face_angle"] = speed - 40 },
        }));
        return session;
    }

    /// <summary>Adds one file of captures.</summary>
    public void Captures(IEnumerable<CaptureRow> captures)
    {
        CaptureRow[] rows = [.. captures];
        var table = Tables.Table(StudyTables.Captures(Setup.Dictionary));
        using var writer = table.NewFile(rows[0].Participant, rows[0].Original);
        writer.Append(Some.Captures(rows.Select(row => row with { Original = rows[0].Original })));
        Value(table.Commit(new TableChange { Adds = [writer.Complete()], Info = new CommitInfo { Stage = "intake" } }));
    }

    public void Decide(string kind, string subject) => Registry.Act("tester", "decide." + kind, act =>
    {
        act.Add(new Decision(0, kind, subject, "seen on video", "Coach", Some.Morning));
        return "{}";
    });

    public RunReport Run(string? stage = null, string? participant = null, IReadOnlyList<Stage>? stages = null, int? parallel = null) => Value(
        new PipelineRunner(stages ?? Stages.All).BringUpToDate(
            Setup, Registry, new RunRequest { Actor = "tester", Stage = stage, Participant = participant, Parallel = parallel }));

    public IReadOnlyList<(string Stage, int Units)> Waiting() => new PipelineRunner(Stages.All).Waiting(Setup, Registry);

    /// <summary>All rows of a table, joined.</summary>
    public RowSet Rows(string table)
    {
        var existing = Tables.Existing(table)!;
        return JoinedRows.Of(existing.Definition, [.. existing.Read()]);
    }

    /// <summary>Paths of all active files of all tables that stages write; the names are hashes of the contents.</summary>
    public IReadOnlyList<string> OutputFiles() =>
        [.. Stages.All.SelectMany(stage => stage.Declaration.Outputs).SelectMany(table => Tables.Existing(table)!.Files().Select(file => $"{table}/{file.Path}"))];

    public static T Value<T>(Outcome<T> outcome)
        where T : notnull => outcome.Succeeded(out var value) ? value : throw new InvalidOperationException(string.Join('\n', outcome.Problems));

    public void Dispose()
    {
        Registry.Dispose();
        Directory.Delete(Setup.Folder.Root, recursive: true);
    }
}
