using System.Diagnostics;
using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Bench;

/// <summary>Makes a study of ten thousand invented swings, taken in session by session from exports, and the exports of one more session.</summary>
/// <remarks>Recordings of the past are cut short, because no stage may read them again; those of the session that comes last have their full length.</remarks>
internal static class RunTask
{
    private const int Sessions = 8;
    private const int Players = 25;
    private const double PastSeconds = 0.3;
    private const double FullSeconds = 2;
    private static readonly LocalDateTime Start = new(2026, 3, 2, 9, 0);

    /// <summary>Makes the study and runs it once. Arguments: the repository, folder to make, sessions a player (8 when left out).</summary>
    public static void SetUp(string[] arguments)
    {
        var (root, folder) = (Path.GetFullPath(arguments[0]), new StudyFolder(Path.GetFullPath(arguments[1])));
        var sessions = arguments.Length > 2 ? int.Parse(arguments[2], CultureInfo.InvariantCulture) : Sessions;
        if (Directory.Exists(folder.Root))
            Directory.Delete(folder.Root, recursive: true);
        Copy(Path.Combine(root, "data-dictionary"), Path.Combine(folder.Root, "data-dictionary"));
        Copy(Path.Combine(root, "scripts/check-samples/sources"), folder.Sources);
        File.Copy(Path.Combine(root, "scripts/check-samples/study.yaml"), folder.StudyFile);
        File.Copy(Path.Combine(root, "protocols/cue-pre-post.yaml"), folder.ProtocolFile);
        var setup = Required.Of(StudySetup.Read(folder));
        using var registry = new StudyRegistry(folder);
        using var identities = new IdentityStore(folder);
        AddPlayers(registry);
        var clock = Stopwatch.StartNew();
        for (var session = 0; session < sessions; session++)
        {
            for (var player = 1; player <= Players; player++)
            {
                AddSession(folder, registry, player, session, PastSeconds);
                var taken = Required.Of(new StudyIntake(new IntakeContext
                {
                    Folder = folder,
                    Zone = setup.Declaration.Zone,
                    Dictionary = setup.Dictionary,
                    Eligibility = setup.Protocol.Eligibility,
                    Mappings = setup.Mappings,
                    Registry = registry,
                    Identities = identities,
                    Tables = new TableStore(folder),
                    Settling = TimeSpan.Zero,
                }).Run());
                foreach (var problem in taken.Files.SelectMany(file => file.Problems))
                    Console.Error.WriteLine(problem);
            }
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"intake s={clock.Elapsed.TotalSeconds:F1} cpu_s={Environment.CpuUsage.TotalTime.TotalSeconds:F1}"));
        var report = Required.Of(new PipelineRunner(Stages.All).BringUpToDate(setup, registry, new RunRequest { Actor = "bench", Progress = null }));
        Console.WriteLine($"run {string.Join(' ', report.Stages.Select(stage => $"{stage.Stage}={stage.Done.Count}"))} swings={new TableStore(folder).Existing("swings")!.Files().Sum(file => file.Rows)}");
    }

    /// <summary>Puts the exports of one more session of the first player into the inbox. Argument: the study.</summary>
    public static void AddExports(string[] arguments)
    {
        var folder = new StudyFolder(Path.GetFullPath(arguments[0]));
        using var registry = new StudyRegistry(folder);
        AddSession(folder, registry, 1, registry.Sessions().Count(session => session.Participant.ToString() == Code(1)), FullSeconds);
    }

    private static void AddPlayers(StudyRegistry registry) => registry.Act("bench", "people.add", act =>
    {
        var at = Instant.FromUtc(2026, 1, 1, 0, 0);
        for (var player = 1; player <= Players; player++)
        {
            var code = new ParticipantId(Code(player));
            act.Save(new Participant(code, Participant.Enrolled, at));
            act.Save(new PersonFacts(code, new Dictionary<string, string> { ["age_band"] = "30-44" }));
            act.Add(new Consent(code, ConsentScope.Research, Given: true, ConsentSigner.Participant, at));
        }

        return "{}";
    });

    private static void AddSession(StudyFolder folder, StudyRegistry registry, int player, int session, double seconds)
    {
        var participant = new ParticipantId(Code(player));
        var local = Start.PlusDays((session * 7) + (player / 6)).PlusHours(player % 6);
        registry.Act("bench", "session.add", act =>
        {
            act.Save(new SessionRecord
            {
                Id = new SessionId(participant, local.Date.ToDateOnly(), 1).ToString(),
                Participant = participant,
                StartedAt = DateTimeZoneProviders.Tzdb["Europe/Lisbon"].AtStrictly(local).ToInstant(),
                StartedLocal = local,
                Phase = session < Sessions / 2 ? "baseline" : "cue",
                Club = "mid iron",
                Variables = """{"handedness":"right"}""",
            });
            return "{}";
        });
        new SessionExports(folder.Inbox, Code(player), local, seconds).Write();
    }

    private static string Code(int player) => string.Create(CultureInfo.InvariantCulture, $"P{player:00}");

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var path in Directory.EnumerateFiles(from, "*.yaml"))
            File.Copy(path, Path.Combine(to, Path.GetFileName(path)));
    }
}
