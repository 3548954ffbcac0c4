using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>Sessions of markers and plates in C3D of all kinds, from files to measures by the mapping alone, against what the player did.</summary>
public sealed class C3dLaboratoryTests
{
    private const int Swings = 2;
    private static readonly C3dStorage DecReal = new(C3dByteOrder.Dec, true);
    private static readonly C3dStorage SgiInteger = new(C3dByteOrder.Sgi, false);
    private static readonly C3dStorage IntelInteger = new(C3dByteOrder.Intel, false);

    private static readonly IReadOnlyList<Vector3D> YUp = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
    private static readonly IReadOnlyList<Vector3D> XUp = [new(0, 1, 0), new(0, 0, 1), new(1, 0, 0)];
    private static readonly IReadOnlyList<Vector3D> AwayAndUp = [new(-1, 0, 0), new(0, 0, 1), new(0, 1, 0)];

    private static readonly Dictionary<string, C3dLaboratory> Laboratories = new()
    {
        ["type 2, z down"] = new() { Plates = Two(2) },
        ["type 2, turned, moments in N.m, ORIGIN of the other sign, mat"] = new()
        {
            Plates = [.. Two(2).Select((plate, i) => plate with { Mount = plate.Mount with { TurnDeg = 180 - (217 * i), Origin = (0.004, -0.006) }, MomentUnit = "N.m", IsOriginTurned = true })],
            MatM = 0.012, RateHz = 200, AnalogSamples = 10, Contact = ContactMark.Header,
        },
        ["type 2, z up, metres, Y up"] = new() { Plates = [.. Two(2).Select(plate => plate with { IsZUp = true })], Axes = YUp, AxesRule = "{ x: x, y: y, z: z }", PointUnit = "m", IsOnPlate = false, Storage = DecReal },
        ["type 1, X up"] = new() { Plates = Two(1), Axes = XUp, AxesRule = "{ x: z, y: x, z: y }", AnalogSamples = 5, Contact = ContactMark.Sound },
        ["type 3, centimetres, integers"] = new() { Plates = Two(3), PointUnit = "cm", Storage = SgiInteger, RateHz = 300, Contact = ContactMark.Sound },
        ["type 4, x away from the target, integers"] = new() { Plates = Two(4), Axes = AwayAndUp, AxesRule = "{ x: -x, y: z, z: y }", Storage = IntelInteger, FirstFrame = 301 },
        ["types 2 and 4 together, subject before labels"] = new() { Plates = [Two(2)[0], Two(4)[1]], Label = landmark => "Ada:" + landmark[..3] + landmark.Length + landmark[^1], Contact = ContactMark.Header },
        ["no mark of contact"] = new() { Plates = Two(2), Contact = ContactMark.None, RateHz = 240, AnalogSamples = 5 },
    };

    public static TheoryData<string, int> Cases => [.. Laboratories.Keys.SelectMany((name, i) => new[] { (name, i % 2 == 0 ? 1 : -1) })];

    [Theory]
    [MemberData(nameof(Cases))]
    public void MarkersAndPlatesGiveWhatThePlayerDid(string name, int side)
    {
        var laboratory = Laboratories[name] with { Side = side };
        laboratory = laboratory with { Plates = [.. laboratory.Plates.Select(plate => plate with { Mount = plate.Mount with { Top = plate.Mount.Top with { Z = side * plate.Mount.Top.Z } } })] };
        using var study = new LaboratoryStudy(side, [laboratory.Mapping()], laboratory.Files(Swings));
        MarkerTruth.Holds(study, laboratory.Movement, laboratory.RateHz, Swings);
        ForceTruth.Holds(study, laboratory.Stance, Swings);
    }

    private static C3dMount[] Two(int type) =>
    [
        new(new PlateMount("lead", new Vector3D(0.24, 0.004, -0.8)) { DepthM = type == 1 ? 0 : 0.041 }, type),
        new(new PlateMount("trail", new Vector3D(-0.24, 0.004, -0.8)) { DepthM = type == 1 ? 0 : 0.041, TurnDeg = 180 }, type),
    ];
}
