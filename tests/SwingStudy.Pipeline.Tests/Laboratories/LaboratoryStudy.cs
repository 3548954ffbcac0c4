using NodaTime;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Identities;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>One session of one player in an invented laboratory, from its files to measures by the mapping alone: intake, linking and measuring as they are.</summary>
internal sealed class LaboratoryStudy : IDisposable
{
    /// <summary>Name of the player in exports.</summary>
    public const string Player = "Ada Invented";

    /// <summary>Zone of the study.</summary>
    public const string Zone = "Europe/Lisbon";

    private static readonly Lazy<Domain.Variables.VariableDictionary> Dictionary = new(() =>
        TestStudy.Value(DictionaryReader.Read(Path.Combine(Repository.Root, "data-dictionary"))));

    private readonly TestStudy _study = new();

    /// <summary>Takes files in and measures.</summary>
    /// <param name="side">+1 right-handed, −1 left-handed.</param>
    /// <param name="mappings">Texts of the mappings; the first source gives the swings.</param>
    /// <param name="files">Files by name.</param>
    public LaboratoryStudy(int side, IReadOnlyList<string> mappings, IEnumerable<(string Name, byte[] Bytes)> files)
    {
        List<SourceMapping> read = [.. mappings.Select(Mapping)];
        _study.Setup = _study.Setup with
        {
            Dictionary = Dictionary.Value,
            Mappings = read,
            Declaration = _study.Setup.Declaration with { Zone = Zone, PreferredSources = [.. read.Select(mapping => mapping.Source)] },
        };
        var session = _study.Session("P01", 0, "baseline");
        _study.Registry.Act("tester", "session.edit", act =>
        {
            act.Save(session with { Variables = $$"""{"handedness": "{{(side > 0 ? "right" : "left")}}"}""" });
            act.Add(new Consent(session.Participant, ConsentScope.Research, true, ConsentSigner.Participant, Some.Morning));
            return "{}";
        });
        using var identities = new IdentityStore(_study.Setup.Folder);
        TestStudy.Value(identities.Add(session.Participant, Player));
        foreach (var (name, bytes) in files)
        {
            var path = Path.Combine(_study.Setup.Folder.Inbox, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }

        Files = TestStudy.Value(new StudyIntake(new IntakeContext
        {
            Folder = _study.Setup.Folder, Zone = Zone, Dictionary = Dictionary.Value, Eligibility = new Domain.Protocols.Eligibility(18, false, 18, []), Mappings = read,
            Registry = _study.Registry, Identities = identities, Tables = _study.Tables, Settling = TimeSpan.Zero,
        }).Run([])).Files;
        Assert.Equal([], Files.Where(file => file.Outcome != FileOutcome.Taken).Select(file => $"{file.File}: {file.Outcome} {string.Join("; ", file.Problems)}"));
        _study.Run("link");
        _study.Run("measure");
    }

    /// <summary>What became of each file.</summary>
    public IReadOnlyList<FileResult> Files { get; }

    /// <summary>When a swing was struck: no two pauses are alike, so that clocks can be told by them.</summary>
    public static Instant Struck(int swing) => Some.Morning + Duration.FromSeconds((40 * (swing + 1)) + (1.7 * swing * swing));

    /// <summary>An instant as exports write it.</summary>
    public static string Local(Instant instant) =>
        instant.InZone(DateTimeZoneProviders.Tzdb[Zone]).ToString("yyyy-MM-dd HH:mm:ss.ffffff", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Rows of a table.</summary>
    public RowSet Rows(string table) => _study.Rows(table);

    /// <summary>The processed curves of a channel, swing by swing, as times and values.</summary>
    public IReadOnlyList<(double[] Times, double[] Values)> Curves(string channel)
    {
        var rows = Rows("swing_curves");
        var (rates, firsts, values) = (rows.Numbers("sample_rate_hz"), rows.Numbers("t0_s"), ((NumberListColumn)rows["values"]).Values);
        return
        [
            .. Enumerable.Range(0, rows.Count).Where(i => rows.Texts("channel")[i] == channel)
                .Select(i => ((double[])[.. values[i]!.Select((_, sample) => firsts[i] + (sample / rates[i]))], values[i]!)),
        ];
    }

    /// <summary>A measure of each swing.</summary>
    public IReadOnlyList<double> Measures(string variable)
    {
        var rows = Rows("curve_measures");
        return [.. Enumerable.Range(0, rows.Count).Where(i => rows.Texts("variable")[i] == variable).Select(i => rows.Numbers("value")[i])];
    }

    /// <summary>Why a measure of the first swing is missing; null when it is not.</summary>
    public string? Reason(string variable)
    {
        var rows = Rows("curve_measures");
        return Enumerable.Range(0, rows.Count).Where(i => rows.Texts("variable")[i] == variable).Select(i => rows.Texts("reason")[i]).First();
    }

    /// <inheritdoc/>
    public void Dispose() => _study.Dispose();

    private SourceMapping Mapping(string text)
    {
        var path = Path.Combine(_study.Setup.Folder.Root, "sources", Guid.NewGuid().ToString("N") + ".yaml");
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return TestStudy.Value(MappingReader.Read(path, Dictionary.Value));
    }
}
