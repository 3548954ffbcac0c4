using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>A force platform of a C3D file.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Type">1 to 4, see the C3D user guide.</param>
/// <param name="Channels">Analog channels, from 0: six, or eight for type 3.</param>
/// <param name="Corners">x, y, z of the corners in the quadrants +x+y, -x+y, -x-y, +x-y of the plate, in the file's laboratory and unit.</param>
/// <param name="Origin">From the sensors' origin to the centre of the surface in plate axes, as the file has it; for type 3 lever arms and height.</param>
/// <param name="Calibration">6 x 6 matrix of type 4, column after column; empty for others.</param>
public sealed record C3dPlatform(int Number, int Type, IReadOnlyList<int> Channels, IReadOnlyList<double> Corners, IReadOnlyList<double> Origin, IReadOnlyList<double> Calibration)
{
    private const int MostPlatforms = 64;
    private const int CornerNumbers = 12;
    private const int CalibrationNumbers = 36;

    /// <summary>The platforms that can be used; for each other one a notice.</summary>
    internal static IReadOnlyList<C3dPlatform> Of(C3dParameters parameters, int analogChannels, string file, List<Problem> notices)
    {
        const string Group = "FORCE_PLATFORM";
        var used = (int)Math.Clamp(parameters.Count(Group, "USED") ?? 0, 0, MostPlatforms);
        var (types, corners, origins) = (parameters.Joined(Group, "TYPE", false), parameters.Joined(Group, "CORNERS", false), parameters.Joined(Group, "ORIGIN", false));
        var channels = parameters.Joined(Group, "CHANNEL", isUnsigned: true);
        var rows = parameters.Find(Group, "CHANNEL")?.Dimensions is [{ } first, _, ..] ? first : used == 0 ? 0 : channels.Count / used;
        var matrices = parameters.Joined(Group, "CAL_MATRIX", false);
        var platforms = new List<C3dPlatform>();
        for (var i = 0; i < used; i++)
        {
            var type = i < types.Count ? (int)types[i] : 0;
            var platform = new C3dPlatform(
                i + 1, type, [.. Part(channels, i, rows).Take(type == 3 ? 8 : 6).Select(channel => (int)channel - 1)], Part(corners, i, CornerNumbers), Part(origins, i, 3),
                type == 4 ? Part(matrices, i, CalibrationNumbers) : []);
            if (platform.Fault(analogChannels) is { } fault)
                notices.Add(C3dMessages.PlatformUnusable(file, i + 1, fault));
            else
                platforms.Add(platform);
        }

        return platforms;
    }

    /// <summary>The platform with its sensors below the surface, where they are in any plate; itself where the file has them there.</summary>
    /// <remarks>Writers differ in the sign of ORIGIN. The whole vector turns; of type 3, whose first two parts are lever arms, the height alone.</remarks>
    /// <param name="up">Direction upward in the file's laboratory.</param>
    public C3dPlatform WithSensorsBelow((double X, double Y, double Z) up)
    {
        if (Type == 1)
            return this;
        var (x, y, z) = new C3dPlateFrame(Corners).ToLaboratory(0, 0, Origin[2]);
        return (x * up.X) + (y * up.Y) + (z * up.Z) >= 0 ? this : this with { Origin = Type == 3 ? [Origin[0], Origin[1], -Origin[2]] : [-Origin[0], -Origin[1], -Origin[2]] };
    }

    private static double[] Part(IReadOnlyList<double> all, int i, int count) => (i + 1) * count <= all.Count ? [.. all.Skip(i * count).Take(count)] : [];

    private string? Fault(int analogChannels)
    {
        if (Type is < 1 or > 4)
            return $"has type {Type}";
        if (Channels.Count != (Type == 3 ? 8 : 6))
            return $"has {Channels.Count} channels";
        if (Channels.Any(channel => channel < 0 || channel >= analogChannels))
            return $"names an analog channel beyond the {analogChannels} of the file";
        if (Corners.Count != CornerNumbers || !C3dPlateFrame.IsSound(Corners))
            return "has no corners of a rectangle";
        if (Origin.Count != 3 || !Origin.All(double.IsFinite))
            return "has no origin";
        return Type == 4 && (Calibration.Count != CalibrationNumbers || !Calibration.All(double.IsFinite)) ? "has no calibration matrix" : null;
    }
}
