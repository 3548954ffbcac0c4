using System.Diagnostics;
using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Bench;

/// <summary>Takes a wide export of two million rows into a study: original stored, cells parsed, units converted, ranges checked, tables committed.</summary>
internal static class IngestTask
{
    private const int Players = 60;

    /// <summary>Makes the study: declarations, players, and the export in its inbox. Arguments: folder of declarations, folder to make, export.</summary>
    public static void SetUp(string[] arguments)
    {
        var folder = new StudyFolder(Path.GetFullPath(arguments[1]));
        if (Directory.Exists(folder.Root))
            Directory.Delete(folder.Root, recursive: true);
        foreach (var path in Directory.EnumerateFiles(arguments[0], "*.yaml", SearchOption.AllDirectories))
        {
            var target = Path.Combine(folder.Root, Path.GetRelativePath(arguments[0], path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(path, target);
        }

        using (var registry = new StudyRegistry(folder))
        {
            registry.Act("bench", "people.add", act =>
            {
                var start = Instant.FromUtc(2024, 1, 1, 0, 0);
                for (var i = 1; i <= Players; i++)
                {
                    var player = new ParticipantId(string.Create(CultureInfo.InvariantCulture, $"P{i:000}"));
                    act.Save(new Participant(player, Participant.Enrolled, start));
                    act.Add(new Consent(player, ConsentScope.Research, Given: true, ConsentSigner.Participant, start));
                }

                return "{}";
            });
        }

        new IdentityStore(folder).Dispose();
        var inbox = Path.Combine(folder.Inbox, "wide");
        Directory.CreateDirectory(inbox);
        File.Copy(arguments[2], Path.Combine(inbox, "a.csv"));
        File.SetLastWriteTimeUtc(Path.Combine(inbox, "a.csv"), new DateTime(2024, 6, 1, 0, 0, 0, DateTimeKind.Utc));
    }

    /// <summary>One intake as a user would run it. Arguments: study, threads.</summary>
    public static void Run(string[] arguments)
    {
        var clock = Stopwatch.StartNew();
        var folder = new StudyFolder(Path.GetFullPath(arguments[0]));
        var study = Required.Of(StudyReader.Read(folder.StudyFile));
        var dictionary = Required.Of(DictionaryReader.Read(Path.Combine(folder.Root, study.Dictionary)));
        using var writerLock = Required.Of(WriterLock.Take(folder));
        using var registry = new StudyRegistry(folder);
        using var identities = new IdentityStore(folder);
        var report = Required.Of(new StudyIntake(new IntakeContext
        {
            Folder = folder,
            Zone = study.Zone,
            Dictionary = dictionary,
            Eligibility = new Eligibility(null, MinorsAllowed: false, 18, []),
            Mappings = Required.Of(MappingReader.ReadAll(folder.Sources, dictionary)),
            Registry = registry,
            Identities = identities,
            Tables = new TableStore(folder),
            Threads = int.Parse(arguments[1], CultureInfo.InvariantCulture),
        }).Run());
        foreach (var problem in report.Files.SelectMany(file => file.Problems))
            Console.Error.WriteLine(problem);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"accepted={report.RowsTaken} rejected={report.RowsRejected} read={report.LinesRead} s={clock.Elapsed.TotalSeconds:F2} cpu_s={Environment.CpuUsage.TotalTime.TotalSeconds:F2} peak_mib={Process.GetCurrentProcess().PeakWorkingSet64 >> 20}"));
    }

    /// <summary>Sums over the tables, to compare with other programs. Argument: study.</summary>
    public static void Check(string[] arguments)
    {
        var folder = new StudyFolder(Path.GetFullPath(arguments[0]));
        var dictionary = Required.Of(DictionaryReader.Read(Path.Combine(folder.Root, "data-dictionary")));
        var tables = new TableStore(folder);
        var captures = tables.Table(StudyTables.Captures(dictionary));
        var (rows, speed, mass) = (0L, 0.0, 0.0);
        foreach (var set in captures.Read(columns: ["speed1_m_s", "mass_kg"]))
        {
            rows += set.Count;
            speed += set.Numbers("speed1_m_s").Where(double.IsFinite).Sum();
            mass += set.Numbers("mass_kg").Where(double.IsFinite).Sum();
        }

        var reasons = tables.Table(StudyTables.Rejects).Read(columns: ["reason"]).SelectMany(set => set.Texts("reason")).CountBy(reason => reason!).OrderBy(pair => pair.Key, StringComparer.Ordinal);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"rows={rows} {string.Join(' ', reasons.Select(pair => $"{pair.Key}={pair.Value}"))} sum_speed1={speed:F4} sum_mass={mass:F4} mb={captures.Files().Sum(file => file.Size) / 1e6:F1}"));
    }
}
