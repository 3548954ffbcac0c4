using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>Forces, centre of pressure and moments of plates that lie and write in all kinds of ways, from files to curves by mappings alone.</summary>
/// <remarks>Truth is the place at which each foot was made to press: statics alone connects it with what the files hold.</remarks>
public sealed class PlateMountTests
{
    private const int Swings = 2;

    private static readonly PlateMount Lead = new("lead", new Vector3D(0.24, 0, -0.8)) { DepthM = 0.041 };
    private static readonly PlateMount Trail = new("trail", new Vector3D(-0.24, 0, -0.8)) { DepthM = 0.041 };

    private static readonly Dictionary<string, TextLaboratory> Laboratories = new()
    {
        ["laboratory axes, reaction"] = new([Lead with { DepthM = 0 }, Trail with { DepthM = 0 }]),
        ["z up, on the plate, N.mm"] = new([Lead, Trail]) { Axes = [new(1, 0, 0), new(0, 0, -1), new(0, 1, 0)], AxesRule = "{ x: x, y: z, z: -y }", IsOnPlate = true, MomentUnit = "N.mm" },
        ["z down, with a mat"] = new([Lead with { MatM = 0.014 }, Trail with { MatM = 0.014 }])
        {
            Axes = [new(1, 0, 0), new(0, 0, 1), new(0, -1, 0)], AxesRule = "{ x: x, y: -z, z: y }", IsOnPlate = true,
        },
        ["a quarter and half a turn"] = new([Lead with { TurnDeg = 90 }, Trail with { TurnDeg = 180 }]) { Axes = [new(1, 0, 0), new(0, 0, -1), new(0, 1, 0)], AxesRule = "{ x: x, y: z, z: -y }" },
        ["any turn, origin aside, mats"] = new(
            [Lead with { TurnDeg = -37.5, Origin = (0.012, -0.007), MatM = 0.02, DepthM = 0.05 }, Trail with { TurnDeg = 143, Origin = (-0.004, 0.009), MatM = 0.02, DepthM = 0.033 }])
        {
            Axes = [new(0, 0, 1), new(1, 0, 0), new(0, 1, 0)], AxesRule = "{ x: y, y: z, z: x }", MomentUnit = "N.mm",
        },
        ["left-handed axes"] = new([Lead with { TurnDeg = 20 }, Trail]) { Axes = [new(1, 0, 0), new(0, 0, 1), new(0, 1, 0)], AxesRule = "{ x: x, y: z, z: y }" },
        ["raised plates of two heights"] = new([Lead with { Top = new(0.24, 0.05, -0.8) }, Trail with { Top = new(-0.24, 0.03, -0.8), MatM = 0.02 }]) { IsOnPlate = true },
    };

    public static TheoryData<string, int> Cases => [.. Laboratories.Keys.Select((name, i) => (name, i % 2 == 0 ? 1 : -1))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void PressureAndMomentsAreThoseOfTheFeet(string name, int side)
    {
        var laboratory = Laboratories[name];
        laboratory = laboratory with { Mounts = [.. laboratory.Mounts.Select(mount => mount with { Top = mount.Top with { Z = side * mount.Top.Z } })] };
        var stance = new Stance { Side = side, GroundY = laboratory.Mounts[0].Top.Y + laboratory.Mounts[0].MatM };
        using var study = new LaboratoryStudy(side, [laboratory.Mapping()], laboratory.Files(stance, Swings));
        ForceTruth.Holds(study, stance, Swings);
    }

    [Fact]
    public void OnePlateUnderBothFeetGivesTheirCommonPressure()
    {
        var laboratory = new TextLaboratory([new PlateMount("both", new Vector3D(0.02, 0, -0.8)) { DepthM = 0.06, TurnDeg = 90, MatM = 0.01 }])
        {
            Axes = [new(1, 0, 0), new(0, 0, -1), new(0, 1, 0)], AxesRule = "{ x: x, y: z, z: -y }", IsOnPlate = true,
        };
        var stance = new Stance { GroundY = 0.01 };
        using var study = new LaboratoryStudy(1, [laboratory.Mapping()], laboratory.Files(stance, Swings));
        ForceTruth.Holds(study, stance, Swings, hasFeet: false);
        Assert.Contains("both feet stood on one plate", study.Reason("lead_share_impact"), StringComparison.Ordinal);
    }

    [Fact]
    public void PlatesThatWriteFilesOfTheirOwnAreJoined()
    {
        var stance = new Stance();
        TextLaboratory lead = new([Lead with { TurnDeg = 180 }]) { Source = "near-plate", RateHz = 1000, ClockAheadS = 3.25, IsOnPlate = true }, trail = new([Trail]) { Source = "far-plate", RateHz = 600, ClockAheadS = -1.5, MomentUnit = "N.mm" };
        using var study = new LaboratoryStudy(1, [lead.Mapping(), trail.Mapping()], [.. lead.Files(stance, 4), .. trail.Files(stance, 4)]);
        ForceTruth.Holds(study, stance, 4);
    }

    [Fact]
    public void PlatesThatGiveTheirCentreOfPressureGiveAllButMomentsAboutTheVertical()
    {
        var laboratory = new TextLaboratory([Lead with { TurnDeg = 30, Origin = (0.01, 0.02) }, Trail with { MatM = 0 }])
        {
            Axes = [new(1, 0, 0), new(0, 0, -1), new(0, 1, 0)], AxesRule = "{ x: x, y: z, z: -y }", GivesPressure = true, MomentUnit = "N.mm",
        };
        var stance = new Stance();
        using var study = new LaboratoryStudy(1, [laboratory.Mapping()], laboratory.Files(stance, Swings));
        ForceTruth.Holds(study, stance, Swings, hasFreeMoment: false);
        Assert.NotNull(study.Reason("free_moment_peak_lead"));
    }
}
