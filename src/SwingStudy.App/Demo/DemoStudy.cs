using System.Globalization;
using System.Reflection;
using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Demo;

/// <summary>
/// The demo: exports of an invented academy with planted effects, as messy as real ones, and the declarations that read them. Players, places,
/// devices and numbers are made up.
/// </summary>
internal static class DemoStudy
{
    /// <summary>Phase before the cue.</summary>
    public const string Baseline = "baseline";

    /// <summary>Phase with the cue.</summary>
    public const string Cue = "cue";

    /// <summary>Phase four weeks later, without cue.</summary>
    public const string FollowUp = "four-weeks-later";

    /// <summary>The invented academy.</summary>
    public const string Academy = "Brackenwick Academy";

    /// <summary>The ball of all players.</summary>
    public const string UsualBall = "range two-piece";

    /// <summary>The ball that one player changes to.</summary>
    public const string OtherBall = "new three-piece";

    /// <summary>Outcomes that say how speed changes: when the vertical force peaks, how high, and how much the wrists have opened when the hands are fastest.</summary>
    public static readonly IReadOnlyList<string> Mechanisms = ["vertical_peak_total_time", "vertical_peak_total", "angle_lost_before_grip_peak"];

    /// <summary>Seed of the swings; any other gives another, equally invented, spring.</summary>
    public const ulong DefaultSeed = 20260302;

    /// <summary>Seed with which the starts of the cue were drawn, as the protocol says.</summary>
    public const ulong RandomizationSeed = 271828;

    private static readonly string[] Declarations = ["study.yaml", "protocol.yaml", "bay-sensor.yaml", "speed-gate.yaml", "headband.yaml", "coach-log.yaml", "floor-plates.yaml", "ceiling-cameras.yaml"];

    private const MovementDevices Both = MovementDevices.Plates | MovementDevices.Markers;

    private static readonly PlantedPlayer[] Players =
    [
        new("P01", ["Otter", "OT"], new(81, 1.82), 1.10, 0.55, 0.06, 0, new(PushEarlier: 0.040, ReleaseLater: 0.012), 0.35, 0.85, 0.85, Both),
        new("P02", ["Wren", "WR"], new(62, 1.69, LeftHanded: true), 1.29, 0.50, 0.06, 0, new(PushEarlier: 0.045, ReleaseLater: 0.012), 0.40, 0.80, 0.50, Both, FollowUpSessions: 1),
        new("P03", ["Badger", "BA"], new(88, 1.85), 1.02, 0.60, 0.05, 0, PlantedCue.Nothing, 0.35, 0.95, 1, Both),
        new("P04", ["Heron", "HE"], new(74, 1.78), 1.19, 0.50, 0.07, 0, new(PushEarlier: 0.050, ReleaseLater: 0.010), 0.40, 0.85, 0.90, MovementDevices.Plates),
        new("P05", ["Marten", "MA"], new(84, 1.80), 0.97, 0.45, 0.03, 0, new(PushMore: 0.45), 0.45, 1.00, 0.60, MovementDevices.Plates),
        new("P06", ["Plover", "PL"], new(69, 1.72), 1.24, 0.50, 0.05, 0, PlantedCue.Nothing, 0.35, 0.80, 1, BallChanges: true),
        new("P07", ["Grünfink", "GF"], new(78, 1.79), 1.07, 0.55, 0.07, 0, new(PushEarlier: 0.045, ReleaseLater: 0.014), 0.40, 0.90, 1),
        new("P08", ["Stoat", "ST"], new(76, 1.76), 1.15, 0.50, 0.05, 0, PlantedCue.Nothing, 0.90, 1.20, 1, FollowUpSessions: 1),
    ];

    private static readonly JsonSerializerOptions TruthJson = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The academy's zone; summer time starts within the study.</summary>
    public static DateTimeZone Zone { get; } = DateTimeZoneProviders.Tzdb["Europe/Dublin"];

    /// <summary>The players with their drawn starts.</summary>
    public static IReadOnlyList<PlantedPlayer> PlayersWithStarts => DemoSimulation.WithDrawnStarts(Players, RandomizationSeed);

    /// <summary>
    /// Writes <c>study.yaml</c>, <c>protocol.yaml</c>, <c>sources/</c>, <c>inbox/</c> and <c>truth.json</c> into the folder, replacing those files. The
    /// dictionary is not written: it ships with the program and must stand in <c>data-dictionary/</c>.
    /// </summary>
    /// <returns>What was planted; its players' aliases have to be added to the study before intake.</returns>
    public static PlantedTruth Write(StudyFolder folder, ulong seed = DefaultSeed)
    {
        Directory.CreateDirectory(folder.Sources);
        foreach (var name in Declarations)
            File.WriteAllText(Path.Combine(name is "study.yaml" or "protocol.yaml" ? folder.Root : folder.Sources, name), Declaration(name));
        var (files, truth) = Make(seed);
        foreach (var file in files)
        {
            var path = Path.Combine(folder.Inbox, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Bytes);
        }

        File.WriteAllText(Path.Combine(folder.Root, "truth.json"), JsonSerializer.Serialize(truth, TruthJson) + "\n");
        return truth;
    }

    /// <summary>The files of a seed and what was planted in them.</summary>
    internal static (IReadOnlyList<DemoFile> Files, PlantedTruth Truth) Make(ulong seed)
    {
        var players = PlayersWithStarts;
        var stays = DemoSimulation.Draw(players, seed);
        var bay = BayExport.Files(stays).ToList();
        List<DemoFile> files = [.. bay, .. GateExport.Files(stays, seed, out var falsePasses), .. HeadbandExport.Files(stays, seed), CoachLog.File(stays), .. MarkerExport.Files(stays, seed), .. PlateExport.Files(stays, seed, out var onPlates)];
        return (files, new(
            "Everything here is invented: academy, players, devices and numbers.", seed, "club_head_speed", Mechanisms, players, Count(stays, bay, files.Count, falsePasses, onPlates)));
    }

    /// <summary>Text of a declaration that ships with the demo.</summary>
    private static string Declaration(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"demo/{name}")
            ?? throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"The program holds no declaration '{name}'."));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static PlantedCounts Count(IReadOnlyList<DemoStay> stays, List<DemoFile> bay, int files, int falsePasses, (int Swings, int False) onPlates)
    {
        var sessions = stays.SelectMany(stay => stay.Sessions).ToList();
        var swings = sessions.SelectMany(session => session.Swings).ToList();
        var misread = stays.Select(stay => BayExport.Rows(stay).Count(row => row.Swing.Misread != Misread.None)).ToList();
        var mended = misread[BayExport.CorrectedStay(stays)];
        return new()
        {
            Sessions = sessions.Count,
            Swings = swings.Count(swing => !swing.IsPractice),
            PracticeSwings = swings.Count(swing => swing.IsPractice),
            MissedByBay = swings.Count(swing => swing.MissedByBay),
            MissedByGate = swings.Count(swing => swing.MissedByGate),
            FalsePasses = falsePasses,
            OnPlates = onPlates.Swings,
            FalseOnPlates = onPlates.False,
            Misreads = misread.Sum() - mended,
            MendedMisreads = mended,
            BayFiles = bay.Count,
            Copies = bay.Count(file => file.Path.Contains("Kopie von", StringComparison.Ordinal)),
            CorrectedFiles = bay.Count(file => file.Path.Contains("_korrigiert", StringComparison.Ordinal)),
            Files = files,
        };
    }
}
