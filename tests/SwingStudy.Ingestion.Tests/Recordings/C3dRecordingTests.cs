using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Ingestion.Tests.Readers.C3d;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Recordings;

/// <summary>C3D files through mappings.</summary>
public sealed class C3dRecordingTests
{
    private static readonly SourceMapping Mapping = SomeRecording.Mapping with
    {
        Reader = ReaderKind.C3d,
        Participant = Some.Preamble("^SUBJECTS:NAMES: (?<value>.+)"),
        Time = new TimeRule { Parts = [new FieldSource { Constant = "2025-10-07 11:05:40.192" }], Format = "yyyy-MM-dd HH:mm:ss.f", Zone = "Europe/Lisbon" },
        Recording = new RecordingRule
        {
            Landmarks = new Dictionary<string, string> { ["club_head"] = "HEAD", ["grip"] = "grip" },
            Channels = new Dictionary<string, FieldSource> { ["sound"] = Some.Column("SOUND") },
            Events = new Dictionary<string, string> { ["impact"] = "Contact" },
            Axes = AxisMap.Of("x", "z", "-y")!,
        },
    };

    [Fact]
    public void PointsChannelsEventsAndThePlayerAreRead()
    {
        var recording = One(SomeC3d.Bytes(), Mapping, out _);
        Assert.Equal(("Ada", 0.02), (recording.Alias, Math.Round(recording.ContactSeconds!.Value, 6)));
        Assert.Equal([0.1, 0.2, 0.3], SomeRecording.Values(recording, "club_head_y").Select(value => Math.Round(value, 9)));
        Assert.Equal([-0.01, -0.02, -0.03], SomeRecording.Values(recording, "club_head_z").Select(value => Math.Round(value, 9)));
        Assert.True(double.IsNaN(SomeRecording.Values(recording, "grip_x")[1]));
        var sound = recording.Curves.Single(curve => curve.Channel == "sound");
        Assert.Equal((200.0, "V"), (sound.RateHz, sound.Unit));
        Assert.Equal([0.0, 1, -2, 3, -4, 5], sound.Values);
    }

    [Fact]
    public void ALabelWithItsSubjectBeforeItIsFoundAndOneThatIsMissingIsTold()
    {
        var bytes = SomeC3d.Bytes(SomeC3d.Recording with { Points = [SomeC3d.Recording.Points[0] with { Label = "Ada:HEAD" }] }, C3dStorage.IntelReal);
        var recording = One(bytes, Mapping, out var reader);
        Assert.Contains(recording.Curves, curve => curve.Channel == "club_head_x");
        Assert.Contains(reader.Remarks, remark => remark.Code == "label-missing");
    }

    [Fact]
    public void AFileWithNoneOfTheLabelsIsHeld()
    {
        var bytes = SomeC3d.Bytes(SomeC3d.Recording with { Points = [SomeC3d.Recording.Points[0] with { Label = "OTHER" }], Analog = [] }, C3dStorage.IntelReal);
        Assert.Equal("label-missing", Assert.Single(Read(bytes, Mapping).Reader.Problems).Code);
    }

    [Fact]
    public void UnitsThatContradictTheFileHoldIt()
    {
        var mapping = Mapping with { Recording = Mapping.Recording! with { LandmarkUnit = "m" } };
        Assert.Equal("unit-mismatch", Assert.Single(Read(SomeC3d.Bytes(), mapping).Reader.Problems).Code);
    }

    /// <summary>A player of 700 N stands at (300, 500) mm of the file's laboratory (z up); the plate's z points down.</summary>
    [Fact]
    public void APlatformBecomesReactionsInTheLaboratoryAboutTheCentreOfItsSurface()
    {
        double[] corners = [500, 200, 0, 100, 200, 0, 100, 800, 0, 500, 800, 0];
        double[] load = [0, 0, 700, 0, 0, 0];
        var recording = new C3dRecording
        {
            RateHz = 100,
            Analog = [.. load.Select((value, i) => new C3dAnalog($"C{i}", i < 3 ? "N" : "Nmm", [value, value]))],
            Platforms = [new C3dPlatform(1, 2, [0, 1, 2, 3, 4, 5], corners, [0, 0, -41], [])],
        };
        var mapping = Mapping with
        {
            Participant = null,
            Recording = new RecordingRule { Axes = AxisMap.Of("x", "z", "-y")!, Loads = LoadDirection.OnPlate },
            Plates = new Dictionary<string, PlateGeometry> { ["trail"] = new() { Platform = 1 } },
        };
        var read = One(SomeC3d.Bytes(recording, C3dStorage.IntelReal), mapping, out _);
        Assert.Equal([700.0, 700], SomeRecording.Values(read, "trail_force_y"));
        Assert.Equal((0.3, 0.0, -0.5), (Origin("x"), Origin("y"), Origin("z")));

        double Origin(string axis) => Math.Round(SomeRecording.Values(read, $"trail_origin_{axis}")[0], 6) + 0.0;
    }

    [Fact]
    public void AxesOfTheOtherHandTurnMomentsOnceMore()
    {
        var rule = new RecordingRule { Axes = AxisMap.Of("x", "y", "-z")! };
        var device = ((string[])["force", "moment"]).SelectMany(kind => "xyz".Select((axis, i) => new RecordedCurve($"lead_{kind}_{axis}", "N", 100, [i + 1]))).ToList();
        var turned = new LaboratoryAxes(rule, new Dictionary<string, PlateGeometry>()).Turned(device, true).ToDictionary(curve => curve.Channel, curve => curve.Values[0]);
        Assert.Equal((1.0, 2.0, -3.0), (turned["lead_force_x"], turned["lead_force_y"], turned["lead_force_z"]));
        Assert.Equal((-1.0, -2.0, 3.0), (turned["lead_moment_x"], turned["lead_moment_y"], turned["lead_moment_z"]));
    }

    [Fact]
    public void APlateTurnedByAQuarterIsTurnedBack()
    {
        var plates = new Dictionary<string, PlateGeometry> { ["lead"] = new() { TurnDeg = 90 } };
        List<RecordedCurve> device = [new("lead_force_x", "N", 100, [1]), new("lead_force_y", "N", 100, [5]), new("lead_force_z", "N", 100, [0])];
        var turned = new LaboratoryAxes(new RecordingRule(), plates).Turned(device, true).ToDictionary(curve => curve.Channel, curve => Math.Round(curve.Values[0], 12));
        Assert.Equal((0.0, 5.0, -1.0), (turned["lead_force_x"], turned["lead_force_y"], turned["lead_force_z"]));
    }

    private static (IReadOnlyList<Recording> Recordings, IRecordingReader Reader) Read(byte[] bytes, SourceMapping mapping)
    {
        Assert.True(RecordingReaders.Open(new MemoryStream(bytes), new RecordingRequest { Mapping = mapping, File = "a.c3d", Name = "a.c3d" }).Succeeded(out var reader));
        using (reader)
            return ([.. reader.Read()], reader);
    }

    private static Recording One(byte[] bytes, SourceMapping mapping, out IRecordingReader reader)
    {
        (var recordings, reader) = Read(bytes, mapping);
        Assert.Empty(reader.Problems);
        return Assert.Single(recordings);
    }
}
