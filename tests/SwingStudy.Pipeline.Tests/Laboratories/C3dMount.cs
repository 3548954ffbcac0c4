using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>A plate as a C3D file describes it. Source of the types: the C3D user guide, c3d.org.</summary>
/// <param name="Mount">Where it lies.</param>
/// <param name="Type">1 to 4.</param>
internal sealed record C3dMount(PlateMount Mount, int Type)
{
    private const double HalfX = 0.2;
    private const double HalfY = 0.3;
    private const double ArmX = 0.12;
    private const double ArmY = 0.21;

    /// <summary>Volts to newtons and newton metres, row after row: channels speak into each other.</summary>
    private static readonly double[,] Sensitivity =
    {
        { 100, 1.5, 0, 0, 0, 0 }, { 0, 105, -0.8, 0, 0, 0 }, { 0, 0, 210, 0, 0, 0 }, { 0, 0, 0.4, 30, 0, 0 }, { 0, 0, 0, 0.2, 28, 0 }, { 0, 0, 0, 0, 0.1, 15 },
    };

    /// <summary>Whether the plate's own z points up; down as usual.</summary>
    public bool IsZUp { get; init; }

    /// <summary>Whether the file has ORIGIN with the other sign.</summary>
    public bool IsOriginTurned { get; init; }

    /// <summary>Unit of moments that the channels say; null: force times the unit of points.</summary>
    public string? MomentUnit { get; init; }

    private Vector3D[] Axes => IsZUp
        ? [Mount.Turned(new(1, 0, 0)), Mount.Turned(new(0, 0, -1)), Vector3D.Up]
        : [Mount.Turned(new(1, 0, 0)), Mount.Turned(new(0, 0, 1)), -Vector3D.Up];

    /// <summary>The platform's parameters.</summary>
    public C3dPlatform Platform(int number, int firstChannel, Func<Vector3D, Vector3D> inFile, double lengths)
    {
        var axes = Axes;
        double[] corners = [.. new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }
            .Select(corner => lengths * inFile(Mount.Top + (corner.Item1 * HalfX * axes[0]) + (corner.Item2 * HalfY * axes[1]))).SelectMany(place => new[] { place.X, place.Y, place.Z })];
        var toTop = Mount.Top - Mount.Sensors;
        double[] origin = Type == 1 ? [0, 0, 0] : [.. axes.Select(axis => (IsOriginTurned ? -1 : 1) * lengths * toTop.Dot(axis))];
        if (Type == 3)
            (origin[0], origin[1]) = (lengths * ArmX, lengths * ArmY);
        // Column after column; moments in newtons times the unit of points.
        double[] calibration = Type == 4 ? [.. Enumerable.Range(0, 36).Select(i => Sensitivity[i % 6, i / 6] * (i % 6 < 3 ? 1 : lengths))] : [];
        return new C3dPlatform(number, Type, [.. Enumerable.Range(firstChannel, Type == 3 ? 8 : 6)], corners, origin, calibration);
    }

    /// <summary>What its channels hold: the load of a player, and a zero of their own where there are forces alone.</summary>
    public IEnumerable<C3dAnalog> Channels(Stance? stance, double[] times, double lengths, bool isOnPlate, int number)
    {
        var count = Type == 3 ? 8 : 6;
        double[][] series = [.. Enumerable.Range(0, count).Select(_ => new double[times.Length])];
        for (var i = 0; i < times.Length; i++)
        {
            var load = stance is null ? new double[6] : Load(Type == 1 ? Mount.Top : Mount.Sensors, stance, times[i], isOnPlate ? -1 : 1);
            var read = OfType(load, MomentUnit switch { "N.m" => 1, "N.mm" => 1000, _ => lengths }, lengths);
            for (var channel = 0; channel < count; channel++)
                series[channel][i] = read[channel];
        }

        return series.Select((values, channel) => new C3dAnalog($"P{number + 1}C{channel + 1}", Unit(channel), values));
    }

    private string Unit(int channel) => Type switch
    {
        4 => "V",
        1 when channel is 3 or 4 => "",
        1 or 2 when channel >= 3 => MomentUnit ?? "",
        _ => "N",
    };

    private double[] Load(Vector3D point, Stance stance, double time, int sign)
    {
        var (force, moment) = Mount.About(point, stance, time);
        return [.. Axes.Select(axis => sign * force.Dot(axis)), .. Axes.Select(axis => sign * moment.Dot(axis))];
    }

    private double[] OfType(double[] load, double moments, double lengths)
    {
        var (fx, fy, fz, mx, my, mz) = (load[0], load[1], load[2], load[3], load[4], load[5]);
        switch (Type)
        {
            case 1:
                var (px, py) = fz == 0 ? (0, 0) : (-my / fz, mx / fz);
                return [fx, fy, fz, lengths * px, lengths * py, moments * (mz - ((px * fy) - (py * fx)))];
            case 3:
                // Four three-axis sensors share the load as statics says; what statics leaves open is split evenly.
                var (bySide, byEnd, turn) = (mx / ArmY, my / ArmX, mz / (2 * ArmY));
                return
                [
                    (fx / 2) - turn + 1, (fx / 2) + turn - 2, (fy / 2) + 3, (fy / 2) - 1,
                    ((fz + bySide - byEnd) / 4) + 2, (fz + bySide + byEnd) / 4, ((fz - bySide + byEnd) / 4) - 4, ((fz - bySide - byEnd) / 4) + 1,
                ];
            case 4:
                var volts = new double[6];
                double[] newtons = [.. load];
                // The matrix is solved forces first, then moments, each row by those before it.
                foreach (var row in new[] { 2, 1, 0, 3, 4, 5 })
                    volts[row] = (newtons[row] - Enumerable.Range(0, 6).Where(column => column != row).Sum(column => Sensitivity[row, column] * volts[column])) / Sensitivity[row, row];
                return [.. volts.Select((volt, i) => volt + 0.05 - (0.01 * i))];
            default:
                return [fx + 4, fy - 3, fz + 6, moments * (mx + 0.5), moments * (my - 0.2), moments * (mz + 0.1)];
        }
    }
}
