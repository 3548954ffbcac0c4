using System.Diagnostics;
using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Bench;

/// <summary>Brings a study of ten thousand invented swings up to date after one more session: club-and-ball logs, and one recording of plates and of markers a swing.</summary>
internal static class RunTask
{
    private const int SwingsPerSession = 50;
    private const int Sessions = 8;
    private const int Players = 25;
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 9, 0);

    /// <summary>Makes the study and runs it once. Arguments: the repository, folder to make.</summary>
    public static void SetUp(string[] arguments)
    {
        var (root, folder) = (Path.GetFullPath(arguments[0]), new StudyFolder(Path.GetFullPath(arguments[1])));
        if (Directory.Exists(folder.Root))
            Directory.Delete(folder.Root, recursive: true);
        Directory.CreateDirectory(folder.Root);
        foreach (var path in Directory.EnumerateFiles(Path.Combine(root, "data-dictionary"), "*.yaml"))
        {
            Directory.CreateDirectory(Path.Combine(folder.Root, "data-dictionary"));
            File.Copy(path, Path.Combine(folder.Root, "data-dictionary", Path.GetFileName(path)));
        }

        File.Copy(Path.Combine(root, "scripts/check-samples/study.yaml"), folder.StudyFile);
        File.Copy(Path.Combine(root, "scripts/check-samples/protocol.yaml"), folder.ProtocolFile);
        foreach (var path in Directory.EnumerateFiles(Path.Combine(root, "scripts/check-samples/sources"), "*.yaml"))
        {
            Directory.CreateDirectory(folder.Sources);
            File.Copy(path, Path.Combine(folder.Sources, Path.GetFileName(path)));
        }

        var setup = Required.Of(StudySetup.Read(folder));
        using (var registry = new StudyRegistry(folder))
        {
            var captures = new TableStore(folder).Table(StudyTables.Captures(setup.Dictionary));
            var files = new List<DataFile>();
            for (var player = 1; player <= Players; player++)
            {
                for (var session = 0; session < Sessions; session++)
                    files.AddRange(AddSession(registry, captures, player, session));
            }

            Required.Of(captures.Commit(new TableChange { Adds = files, Info = new CommitInfo { Stage = "intake" } }));
        }

        Console.WriteLine($"first {BringUpToDate(folder)}");
    }

    /// <summary>Adds one session after another and brings the study up to date each time. Arguments: the study, how many.</summary>
    public static void Run(string[] arguments)
    {
        var folder = new StudyFolder(Path.GetFullPath(arguments[0]));
        for (var round = 0; round < int.Parse(arguments[1], CultureInfo.InvariantCulture); round++)
        {
            using (var registry = new StudyRegistry(folder))
            {
                var captures = new TableStore(folder).Table(StudyTables.Captures(Required.Of(StudySetup.Read(folder)).Dictionary));
                var done = registry.Sessions().Count(session => session.Participant.ToString() == "P01");
                Required.Of(captures.Commit(new TableChange { Adds = AddSession(registry, captures, 1, done), Info = new CommitInfo { Stage = "intake" } }));
            }

            Console.WriteLine($"one-more {BringUpToDate(folder)}");
        }
    }

    /// <summary>As the command does it: declarations read, registry opened, all stages run.</summary>
    private static string BringUpToDate(StudyFolder folder)
    {
        var (clock, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        var setup = Required.Of(StudySetup.Read(folder));
        using var registry = new StudyRegistry(folder);
        var report = Required.Of(new PipelineRunner(Stages.All).BringUpToDate(setup, registry, new RunRequest { Actor = "bench", Progress = null }));
        var seconds = clock.Elapsed.TotalSeconds;
        var swings = new TableStore(folder).Existing("swings")!.Files().Sum(file => file.Rows);
        var done = string.Join(' ', report.Stages.Select(stage => string.Create(CultureInfo.InvariantCulture, $"{stage.Stage}={stage.Done.Count}")));
        return string.Create(CultureInfo.InvariantCulture, $"swings={swings} s={seconds:F2} cpu_s={(Environment.CpuUsage.TotalTime - processor).TotalSeconds:F2} {done}");
    }

    private static List<DataFile> AddSession(StudyRegistry registry, DeltaTable captures, int player, int session)
    {
        var participant = new ParticipantId(string.Create(CultureInfo.InvariantCulture, $"P{player:00}"));
        var start = Start + Duration.FromDays((session * 7) + (player / 6)) + Duration.FromHours(player % 6);
        var local = start.InZone(DateTimeZoneProviders.Tzdb["Europe/Lisbon"]).LocalDateTime;
        var record = new SessionRecord
        {
            Id = new SessionId(participant, local.Date.ToDateOnly(), 1).ToString(),
            Participant = participant,
            StartedAt = start,
            StartedLocal = local,
            Phase = session < Sessions / 2 ? "baseline" : "cue",
            Club = "mid iron",
        };
        registry.Act("bench", "session.add", act =>
        {
            act.Save(new Participant(participant, "enrolled", Start));
            act.Save(record);
            return "{}";
        });
        var chance = new Random((player * 1000) + session);
        var strike = new List<(Instant Recorded, Instant Struck)>();
        var recordings = new List<(string Source, Instant Recorded, Instant Struck)>();
        var time = start;
        for (var i = 0; i < SwingsPerSession; i++)
        {
            time += Duration.FromMilliseconds(25_000 + chance.Next(40_000));
            strike.Add((Whole(time), Whole(time)));
            var plates = time + Duration.FromMilliseconds(6200 + chance.Next(-6, 7));
            recordings.Add(("plates", plates - Duration.FromMilliseconds(1300), plates));
            var markers = time - Duration.FromMilliseconds(3400);
            recordings.Add(("markers", markers - Duration.FromMilliseconds(1270 + chance.Next(60)), markers));
        }

        List<DataFile> files = [Written(captures, participant, Name("strike", 0), "bay-strike", strike, chance)];
        files.AddRange(recordings.Select((recording, i) => Written(captures, participant, Name("recording", i), recording.Source, [(recording.Recorded, recording.Struck)], chance)));
        return files;

        string Name(string kind, int number) => Sha256.Of(string.Create(CultureInfo.InvariantCulture, $"{participant}/{session}/{kind}/{number}")).ToString();
    }

    private static Instant Whole(Instant time) => Instant.FromUnixTimeSeconds(time.ToUnixTimeSeconds());

    private static DataFile Written(
        DeltaTable captures, ParticipantId participant, string original, string source, List<(Instant Recorded, Instant Struck)> records, Random chance)
    {
        var rows = new RowSetBuilder(captures.Definition);
        for (var i = 0; i < records.Count; i++)
        {
            rows.Add([
                ("capture_id", string.Create(CultureInfo.InvariantCulture, $"{original[..12]}-{i + 1}")), ("source", source), ("device", $"bay1-{source}"),
                ("participant", participant.ToString()), ("sequence", i + 1), ("recorded_at", records[i].Recorded), ("struck_at", records[i].Struck),
                ("purpose", source == "bay-strike" ? null : "swing"), ("original_sha256", original), ("original_row", i + 1),
                .. source == "bay-strike" ? [("club_head_speed", (object?)(40 + (2 * chance.NextDouble()))), ("ball_speed", 55 + chance.NextDouble())] : Array.Empty<(string, object?)>()]);
        }

        using var writer = captures.NewFile(participant.ToString(), original);
        writer.Append(rows.Build());
        return writer.Complete();
    }
}
