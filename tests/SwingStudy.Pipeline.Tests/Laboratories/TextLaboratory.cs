using System.Globalization;
using System.Text;
using NodaTime;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>A laboratory whose plates write text, one file a swing, and that zeroes its plates in a file of its own.</summary>
internal sealed record TextLaboratory(IReadOnlyList<PlateMount> Mounts)
{
    private const double BeforeS = 1.6;
    private const double AfterS = 0.4;

    /// <summary>Directions of the plates' own x, y and z when they are not turned.</summary>
    public IReadOnlyList<Vector3D> Axes { get; init; } = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];

    /// <summary>The same as a mapping says it.</summary>
    public string AxesRule { get; init; } = "{ x: x, y: y, z: z }";

    /// <summary>Whether files hold what the player does to the plate.</summary>
    public bool IsOnPlate { get; init; }

    /// <summary>Unit of moments.</summary>
    public string MomentUnit { get; init; } = "N.m";

    public double RateHz { get; init; } = 800;

    public string Source { get; init; } = "plates";

    /// <summary>How far the device's clock is ahead.</summary>
    public double ClockAheadS { get; init; }

    /// <summary>Plates that give their centre of pressure in place of moments.</summary>
    public bool GivesPressure { get; init; }

    /// <summary>The mapping.</summary>
    public string Mapping() => string.Create(CultureInfo.InvariantCulture, $$"""
        source: {{Source}}
        title: Invented plates
        device: {{Source}}
        rows: recordings
        reader: delimited
        files: '.*\.csv'
        text: { encoding: utf-8, delimiter: ';', decimal: '.' }
        layout: { preamble: 3, headings: 1, units_row: true }
        participant: { preamble: '^Player (?<value>.+)', missing: ['-'] }
        time: { parts: [{ preamble: '^Began (?<value>.+)' }], format: 'yyyy-MM-dd HH:mm:ss.f', zone: {{LaboratoryStudy.Zone}} }
        recording:
          form: single
          clock: { column: t, unit: s }
          trigger: { preamble: '^Contact (?<value>[0-9.]+)', unit: s }
          purposes: [{ purpose: zero, file: 'zero' }]
          axes: {{AxesRule}}
          loads: {{(IsOnPlate ? "on-plate" : "on-player")}}
        channels:
        {{string.Join('\n', Columns().Select(column => $"  {column.Channel}: {{ column: {column.Heading} }}"))}}
        plates:
        {{string.Join('\n', Mounts.Select(Geometry))}}
        """);

    /// <summary>The files of a session.</summary>
    /// <param name="stance">What the player does.</param>
    /// <param name="swings">How many swings.</param>
    public IEnumerable<(string Name, byte[] Bytes)> Files(Stance stance, int swings)
    {
        yield return ($"{Source}/zero.csv", File(null, "-", LaboratoryStudy.Struck(-1), -0.5, 0.5));
        for (var i = 0; i < swings; i++)
            yield return ($"{Source}/swing-{i + 1}.csv", File(stance, LaboratoryStudy.Player, LaboratoryStudy.Struck(i), -BeforeS, AfterS));
    }

    private byte[] File(Stance? stance, string player, Instant struck, double fromS, double toS)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Player {player}\nBegan {LaboratoryStudy.Local(struck + Duration.FromSeconds(fromS + ClockAheadS))}\nContact {-fromS:0.000000}\n");
        List<(string Channel, string Heading, string Unit)> columns = [.. Columns()];
        text.Append("t;").AppendJoin(';', columns.Select(column => column.Heading)).Append('\n').Append("s;").AppendJoin(';', columns.Select(column => column.Unit)).Append('\n');
        for (var i = 0; i < (toS - fromS) * RateHz; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i / RateHz:0.000000}");
            foreach (var mount in Mounts)
            {
                foreach (var value in Read(mount, stance, fromS + (i / RateHz)))
                    text.Append(CultureInfo.InvariantCulture, $";{value:0.0000}");
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>What a plate shows: loads along its own axes, a zero of its own included.</summary>
    private double[] Read(PlateMount mount, Stance? stance, double time)
    {
        var (force, moment) = stance is null ? default : mount.About(mount.Sensors, stance, time);
        Vector3D[] axes = [.. Axes.Select(mount.Turned)];
        var sign = IsOnPlate ? -1 : 1;
        // By the rule of the left hand where the axes are left-handed.
        var hand = Axes[0].Cross(Axes[1]).Dot(Axes[2]);
        var lengths = MomentUnit == "N.mm" ? 1000 : 1;
        if (!GivesPressure)
            return [.. axes.Select((axis, i) => (sign * force.Dot(axis)) + 3 + i), .. axes.Select((axis, i) => lengths * ((sign * hand * moment.Dot(axis)) - 0.4 + (0.3 * i)))];
        // Pressure where the load meets the plate's top, as the device sees it.
        var atTop = stance is null ? default : mount.About(mount.Top, stance, time).Moment;
        var place = force.Y == 0 ? default : new Vector3D(atTop.Z / force.Y, 0, -atTop.X / force.Y);
        return [.. axes.Select(axis => sign * force.Dot(axis)), .. axes.Where(axis => Math.Abs(axis.Y) < 0.5).Select(axis => lengths * place.Dot(axis))];
    }

    private IEnumerable<(string Channel, string Heading, string Unit)> Columns()
    {
        foreach (var mount in Mounts)
        {
            for (var i = 0; i < 3; i++)
                yield return ($"{mount.Plate}_force_{"xyz"[i]}", $"{mount.Plate}F{i}", "N");
            for (var i = 0; i < 3; i++)
            {
                if (!GivesPressure)
                    yield return ($"{mount.Plate}_moment_{"xyz"[i]}", $"{mount.Plate}M{i}", MomentUnit);
                else if (Math.Abs(Axes[i].Y) < 0.5)
                    yield return ($"{mount.Plate}_cop_{"xyz"[i]}", $"{mount.Plate}P{i}", MomentUnit == "N.mm" ? "mm" : "m");
            }
        }
    }

    private static string Geometry(PlateMount mount) => string.Create(CultureInfo.InvariantCulture,
        $"  {mount.Plate}: {{ centre_mm: [{1000 * mount.Top.X}, {1000 * mount.Top.Y}, {1000 * mount.Top.Z}], depth_mm: {1000 * mount.DepthM}, mat_mm: {1000 * mount.MatM}, turn_deg: {mount.TurnDeg}, origin_mm: [{1000 * mount.Origin.X}, {1000 * mount.Origin.Z}] }}");
}
