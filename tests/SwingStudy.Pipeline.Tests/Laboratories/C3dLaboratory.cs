using System.Globalization;
using System.Text;
using NodaTime;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>How a C3D file of a test says contact.</summary>
internal enum ContactMark
{
    /// <summary>An event of the EVENT group.</summary>
    Group,

    /// <summary>An event of the header, four letters long; there is no EVENT group.</summary>
    Header,

    /// <summary>Sound alone.</summary>
    Sound,

    /// <summary>Nothing: the club's movement tells it.</summary>
    None,
}

/// <summary>A laboratory whose cameras and plates write one C3D file a swing.</summary>
internal sealed record C3dLaboratory
{
    private const double BeforeS = 1.60137;
    private const double AfterS = 0.9;
    private const int SoundDecay = 400;

    /// <summary>Directions of the file's x, y and z in the laboratory of the study.</summary>
    public IReadOnlyList<Vector3D> Axes { get; init; } = [new(1, 0, 0), new(0, 0, -1), new(0, 1, 0)];

    /// <summary>The same as a mapping says it.</summary>
    public string AxesRule { get; init; } = "{ x: x, y: z, z: -y }";

    public string PointUnit { get; init; } = "mm";

    public C3dStorage Storage { get; init; } = C3dStorage.IntelReal;

    public double RateHz { get; init; } = 250;

    public int AnalogSamples { get; init; } = 4;

    public ContactMark Contact { get; init; }

    public IReadOnlyList<C3dMount> Plates { get; init; } = [];

    /// <summary>Whether channels hold what the player does to the plate.</summary>
    public bool IsOnPlate { get; init; } = true;

    /// <summary>+1 right-handed, −1 left-handed.</summary>
    public int Side { get; init; } = 1;

    /// <summary>What the file calls a landmark.</summary>
    public Func<string, string> Label { get; init; } = landmark => landmark.ToUpperInvariant();

    /// <summary>Thickness of a mat on all plates.</summary>
    public double MatM { get; init; }

    /// <summary>Number of the first frame written.</summary>
    public int FirstFrame { get; init; } = 1;

    public InventedSwing Movement => new() { Side = Side };

    public Stance Stance => new() { Side = Side, GroundY = MatM + (Plates.Count > 0 ? Plates[0].Mount.Top.Y : 0) };

    /// <summary>The mapping.</summary>
    public string Mapping() => string.Create(CultureInfo.InvariantCulture, $$"""
        source: capture
        title: Invented cameras and plates
        device: capture
        rows: recordings
        reader: c3d
        files: '.*\.c3d'
        participant: { preamble: '^SUBJECTS:NAMES: (?<value>.+)$', missing: ['-'] }
        time: { parts: [{ preamble: '^RECORDING:BEGAN: (?<value>.+)$' }], format: 'yyyy-MM-dd HH:mm:ss.f', zone: {{LaboratoryStudy.Zone}} }
        recording:
          purposes: [{ purpose: zero, file: 'zero' }]
          axes: {{AxesRule}}
          loads: {{(IsOnPlate ? "on-plate" : "on-player")}}
        landmarks:
        {{string.Join('\n', Marks.Names.Select(landmark => $"  {landmark}: '{Label(landmark)}'"))}}
        {{(Contact == ContactMark.Sound ? "channels: { sound: { column: MIC, unit: V } }" : "")}}
        {{(Contact is ContactMark.Group or ContactMark.Header ? $"events: {{ impact: {EventLabel} }}" : "")}}
        {{(Plates.Count > 0 ? $"plates:\n{string.Join('\n', Plates.Select((plate, i) => $"  {plate.Mount.Plate}: {{ platform: {i + 1}, mat_mm: {1000 * MatM} }}"))}" : "")}}
        """);

    /// <summary>The files of a session.</summary>
    public IEnumerable<(string Name, byte[] Bytes)> Files(int swings)
    {
        if (Plates.Count > 0)
            yield return ("capture/zero.c3d", File(-1, false));
        for (var i = 0; i < swings; i++)
            yield return ($"capture/swing-{i + 1}.c3d", File(i, true));
    }

    private string EventLabel => Contact == ContactMark.Header ? "HIT" : "Ball contact";

    private byte[] File(int swing, bool isPlayed)
    {
        var frames = (int)((BeforeS + AfterS) * RateHz);
        var struck = LaboratoryStudy.Struck(swing);
        var analogRate = RateHz * AnalogSamples;
        double[] times = [.. Enumerable.Range(0, frames * AnalogSamples).Select(i => (i / analogRate) - BeforeS)];
        var analog = Plates.SelectMany((plate, number) => plate.Channels(isPlayed ? Stance : null, times, Lengths, IsOnPlate, number)).ToList();
        if (Contact == ContactMark.Sound)
            analog.Add(new C3dAnalog("MIC", "V", [.. times.Select(time => isPlayed && time >= 0 ? 2 * Math.Exp(-SoundDecay * time) : 0)]));
        var first = 0;
        var recording = new C3dRecording
        {
            RateHz = RateHz,
            FirstFrame = FirstFrame,
            PointUnit = PointUnit,
            Points = [.. Marks.Names.Select((landmark, i) => Point(landmark, frames, isPlayed, (100 * swing) + i + 1))],
            Analog = analog,
            AnalogSamples = AnalogSamples,
            Events = Contact == ContactMark.Group && isPlayed ? [new C3dEvent(EventLabel, BeforeS)] : [],
            Platforms = [.. Plates.Select((plate, i) =>
            {
                var platform = plate.Platform(i + 1, first, InFile, Lengths);
                first += platform.Channels.Count;
                return platform;
            })],
            Texts = new Dictionary<(string, string), IReadOnlyList<string>>
            {
                [("SUBJECTS", "NAMES")] = [isPlayed ? LaboratoryStudy.Player : "-"],
                [("RECORDING", "BEGAN")] = [LaboratoryStudy.Local(struck - Duration.FromSeconds(BeforeS))],
            },
        };
        using var stream = new MemoryStream();
        C3dWriter.Write(stream, recording, Storage);
        var bytes = stream.ToArray();
        if (Contact == ContactMark.Header && isPlayed)
            MarkInHeader(bytes);
        return bytes;
    }

    /// <summary>Words 150 to 202 of the header: 12345, the number of events, times, flags, labels of four letters. Source: the C3D user guide, c3d.org.</summary>
    private static void MarkInHeader(byte[] bytes)
    {
        BitConverter.TryWriteBytes(bytes.AsSpan(149 * 2), (ushort)12345);
        BitConverter.TryWriteBytes(bytes.AsSpan(150 * 2), (ushort)1);
        BitConverter.TryWriteBytes(bytes.AsSpan(152 * 2), (float)BeforeS);
        bytes[188 * 2] = 1;
        Encoding.ASCII.GetBytes("HIT ").CopyTo(bytes, 198 * 2);
    }

    private double Lengths => PointUnit switch { "mm" => 1000, "cm" => 100, _ => 1 };

    /// <summary>A place or direction of the laboratory along the file's axes.</summary>
    private Vector3D InFile(Vector3D place) => new(place.Dot(Axes[0]), place.Dot(Axes[1]), place.Dot(Axes[2]));

    private C3dPoint Point(string landmark, int frames, bool isPlayed, int seed)
    {
        var noise = new Noise(seed);
        double[][] series = [new double[frames], new double[frames], new double[frames]];
        for (var i = 0; i < frames; i++)
        {
            var place = isPlayed ? Lengths * InFile(Marks.Place(Movement, landmark, (i / RateHz) - BeforeS)) : Vector3D.Missing;
            (series[0][i], series[1][i], series[2][i]) = (place.X + Noise(), place.Y + Noise(), place.Z + Noise());
        }

        return new C3dPoint(Label(landmark), series[0], series[1], series[2]);

        double Noise() => 0.0003 * Lengths * noise.Next();
    }
}
