using System.Globalization;
using System.Text;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>A study with three invented players whose exports lie in every kind of file: shared and single text files, JSON, NDJSON, a workbook of
/// sessions. The speeds of each player occur nowhere else.</summary>
internal sealed class CoachedStudy : IDisposable
{
    /// <summary>Pseudonym of the player who leaves: long enough not to occur by chance.</summary>
    public const string Leaver = "PZQ7XK41";

    /// <summary>Alias of the player who leaves, with an accent and two words.</summary>
    public const string Alias = "Ödön Fjellström";

    /// <summary>Another alias of that player.</summary>
    public const string SecondAlias = "Fjello-9";

    /// <summary>Name of that player, which stands in the store of identities alone.</summary>
    public const string Name = "Oedoen von Fjellstroem-Quist";

    /// <summary>Contact of that player.</summary>
    public const string Contact = "fjellstroem@invented.example";

    private static readonly string[] Others = ["Mira Testova", "Jon Sample"];
    private static readonly Lazy<string> Prepared = new(Prepare);
    private readonly TestStudy _study;

    public CoachedStudy() => _study = TestStudy.CopyOf(Prepared.Value);

    /// <summary>The study folder.</summary>
    public string Root => _study.Root;

    /// <summary>Every text by which the leaver could be found.</summary>
    public static IReadOnlyList<string> Texts { get; } = [Leaver, "Fjellstr", "Fjello", Name, Contact, "ÖDÖN", "Ödön"];

    /// <summary>Values of the leaver alone.</summary>
    public static IReadOnlyList<double> Values { get; } = [.. new[] { 0, 3, 4, 6 }.SelectMany(Speeds)];

    /// <summary>Values of the others.</summary>
    public static IReadOnlyList<double> OtherValues { get; } = [.. new[] { 1, 2, 5, 7 }.SelectMany(Speeds)];

    /// <summary>Runs a command line in the study.</summary>
    public Finished Run(params string[] arguments) => _study.Run(arguments);

    /// <summary>Puts a text into the inbox.</summary>
    public string Drop(string name, string text) => _study.Drop(name, text);

    /// <summary>Absolute path below the study folder.</summary>
    public string PathOf(string relative) => _study.PathOf(relative);

    /// <summary>One number from a query.</summary>
    public long Count(string sql) => _study.Query(sql)[0][0].GetInt64();

    /// <inheritdoc/>
    public void Dispose() => _study.Dispose();

    /// <summary>Rows of one player: five swings, a minute apart, with speeds that nobody else has.</summary>
    public static string Csv(string player, int series, string day = "2026-05-04") => string.Concat(Speeds(series).Select((speed, i) =>
        string.Create(CultureInfo.InvariantCulture, $"{player},{day} {10 + (series / 10)}:{(series % 10 * 6) + i:00}:00,{i + 1},{speed}\n")));

    private static string Objects(string player, int series) => string.Join(",\n", Speeds(series).Select((speed, i) =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"Player":"{{player}}","Time":"2026-05-06 10:{{((series - 4) * 6) + i:00}}:00","No":{{i + 1}},"Speed":{{speed}}}""")));

    private static IEnumerable<double> Speeds(int series) => Enumerable.Range(0, 5).Select(i => Math.Round(37.1357 + (0.6113 * series) + (0.0171 * i), 4));

    /// <summary>Takes everything in and computes it, with decisions, reports, a release, an export inside the folder.</summary>
    private static string Prepare()
    {
        var study = new TestStudy(SensorMapping.With(), Json("json"), Json("ndjson"), Log);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => study.Dispose();
        Add(study, Leaver, Alias, "--alias", SecondAlias, "--name", Name, "--contact", Contact);
        Add(study, "P11", Others[0]);
        Add(study, "P12", Others[1]);
        study.Drop("coach-log/log.xlsx", Sessions());
        // Text with all players; with the leaver alone; JSON and NDJSON with all.
        study.Drop("bay/shared.csv", Encoding.Latin1.GetBytes("Player,Time,No,Speed\n" + Csv(Alias, 0) + Csv(Others[0], 1) + Csv(Others[1], 2) + $"{SecondAlias},2026-05-04 10:50:00,9,nonsense\n"));
        study.Drop("bay/alone.csv", "Player,Time,No,Speed\n" + Csv(Alias, 3, "2026-05-05"));
        study.Drop("json/shared.json", "[" + string.Join(",\n", Objects(Alias, 4), Objects(Others[0], 5)) + "]");
        study.Drop("ndjson/shared.ndjson", Objects(Alias, 6).Replace(",\n", "\n", StringComparison.Ordinal) + "\n" + Objects(Others[1], 7).Replace(",\n", "\n", StringComparison.Ordinal) + "\n");
        study.Run("ingest").Expect(0);
        study.Run("run").Expect(0);
        foreach (var (player, reason) in new[] { (Leaver, $"{Alias} slipped"), ("P11", $"stood in for {Alias}") })
        {
            var swing = study.Query($"SELECT swing_id FROM swings WHERE participant = '{player}' ORDER BY swing_id")[0][0].GetString()!;
            study.Run("decide", "exclude", swing, "--reason", reason).Expect(0);
        }

        study.Run("run").Expect(0);
        study.Run("report").Expect(0);
        study.Run("release", "spring").Expect(0);
        study.Run("export", "--to", study.PathOf("out")).Expect(0);
        return study.Root;
    }

    private static void Add(TestStudy study, string code, string alias, params string[] more)
    {
        study.Run(["people", "add", code, "--alias", alias, "--age-band", "30-44", .. more]).Expect(0);
        study.Run("people", "consent", code, "--scope", "research", "--form", "1").Expect(0);
    }

    private static string Json(string reader) => SensorMapping.With(reader: reader, source: reader).Replace("csv|xlsx", reader, StringComparison.Ordinal);

    private const string Log = """
        source: coach-log
        title: Invented log
        device: coach-log-1
        rows: sessions
        reader: workbook
        files: '.*\.xlsx'
        participant: { column: Player }
        time: { parts: [{ column: Start }], format: 'yyyy-MM-dd HH:mm', zone: Europe/Berlin }
        phase: { column: Phase }
        values:
          note: { column: Note }
          pain_nrs: { column: Pain }
        """;

    private static byte[] Sessions()
    {
        var rows = new List<IEnumerable<string>> { new[] { "Player", "Start", "Phase", "Note", "Pain" }.Select(Workbook.Text) };
        foreach (var day in new[] { "2026-05-04", "2026-05-05", "2026-05-06" })
        {
            foreach (var player in new[] { Alias, Others[0], Others[1] })
                rows.Add([Workbook.Text(player), Workbook.Text($"{day} 09:55"), Workbook.Text(day == "2026-05-04" ? "baseline" : "cue"), Workbook.Text($"{player} was early"), Workbook.Number("1")]);
        }

        return Workbook.Of([.. rows]);
    }
}
