using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Bench;

/// <summary>Exports of one invented session as the mappings of <c>scripts/check-samples/sources</c> read them: a log of a club-and-ball sensor, and for each
/// swing a text of two force plates and a C3D file of marker cameras.</summary>
/// <param name="inbox">The study's inbox.</param>
/// <param name="player">Code of the player.</param>
/// <param name="start">Local start of the session.</param>
/// <param name="seconds">Length of a recording.</param>
internal sealed class SessionExports(string inbox, string player, LocalDateTime start, double seconds)
{
    private const int Swings = 50;
    private const int PlateRate = 500;
    private const int CameraRate = 200;
    private const double Newtons = 850;

    /// <summary>Contact is this share of a recording after its first sample.</summary>
    private const double ContactShare = 0.65;

    private static readonly string[] Landmarks = ["CLB1", "CLB2", "CLB3", "L_WR", "L_EL", "L_SH", "T_SH", "PV_L", "PV_T", "PV_B", "T_HP", "T_KN", "T_AN", "L_AN"];
    private static readonly LocalDateTimePattern Stamp = LocalDateTimePattern.CreateWithInvariantCulture("uuuuMMdd_HHmmss");
    private static readonly LocalDateTimePattern Moment = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm:ss.fff");
    private static readonly CultureInfo Comma = DecimalComma();
    private readonly Random _chance = new(HashCode.Combine(player.Length, start.DayOfYear, int.Parse(player[1..], CultureInfo.InvariantCulture)));

    /// <summary>Writes the files.</summary>
    public void Write()
    {
        var name = Stamp.Format(start)[..13];
        var (plates, markers) = (Folder("plates", name), Folder("markers", name));
        var log = new StringBuilder("Invented academy\nCoach list\nTemperature 18,6 C\n");
        log.Append("No;Player;Day;Time;Club;Club speed;Ball speed;Ball/club;Launch up;Launch side;Spin;Carry;Vertical approach;Horizontal path;Remark\n;;;;;[mph];[mph];[-];[deg];[deg];[rpm];[yd];[deg];[deg];\n");
        var index = new StringBuilder("file\tday\tfirst frame at\twho\n");
        var time = start;
        for (var swing = 1; swing <= Swings; swing++)
        {
            time = time.PlusMilliseconds(25_000 + _chance.Next(30_000));
            var speed = 88 + (4 * _chance.NextDouble());
            log.Append(Comma, $"{swing};{player};{time:dd.MM.yyyy};{time:HH:mm:ss};mid iron;{speed:F1};{1.36 * speed:F1};1,36;{15 + _chance.NextDouble():F1};0,4;{6000 + _chance.Next(300)};{165 + _chance.Next(8)};-2,4;1,7;\n");
            var first = time.PlusMilliseconds(6200 + _chance.Next(-6, 7) - (long)(1000 * ContactShare * seconds));
            File.WriteAllText(Path.Combine(plates, string.Create(CultureInfo.InvariantCulture, $"{first:HHmmss}_{swing:000}.txt")), Plates(swing, first, name));
            first = time.PlusMilliseconds(-3400 + _chance.Next(-6, 7) - (long)(1000 * ContactShare * seconds));
            var file = string.Create(CultureInfo.InvariantCulture, $"m{swing:00}_{Stamp.Format(first)}.c3d");
            index.Append(CultureInfo.InvariantCulture, $"{file}\t{first:dd-MM-yyyy}\t{first:HH:mm:ss.fff}\t{player}\n");
            Markers(Path.Combine(markers, file));
        }

        File.WriteAllText(Path.Combine(markers, "index.txt"), index.ToString());
        File.WriteAllText(Path.Combine(Folder("bay-strike", ""), string.Create(CultureInfo.InvariantCulture, $"bay1_{name}.csv")), log.ToString(), Encoding.Latin1);
    }

    private static CultureInfo DecimalComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        return culture;
    }

    private string Folder(string source, string name) => Directory.CreateDirectory(Path.Combine(inbox, source, name)).FullName;

    private string Plates(int swing, LocalDateTime first, string name)
    {
        var samples = (int)(seconds * PlateRate);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Recording: {swing:0000}\nPlayer: {player}\nStarted: {Moment.Format(first)}\nRate: {PlateRate} Hz\nSamples: {samples}\n");
        text.Append(CultureInfo.InvariantCulture, $"Trigger at: {1000 * ContactShare * seconds:F0} ms\nPlates: T trail, L lead\nZero file: zero_{name}.txt\n");
        text.Append("t\tT.Fx\tT.Fy\tT.Fz\tT.Mx\tT.My\tT.Mz\tL.Fx\tL.Fy\tL.Fz\tL.Mx\tL.My\tL.Mz\nms\tN\tN\tN\tN.mm\tN.mm\tN.mm\tN\tN\tN\tN.mm\tN.mm\tN.mm\n");
        for (var i = 0; i < samples; i++)
        {
            var phase = 2 * Math.PI * ((i / (double)samples) - ContactShare);
            var lead = Newtons * (0.5 + (0.4 * Math.Cos(phase)));
            text.Append(i * 1000 / PlateRate);
            foreach (var vertical in (double[])[Newtons - lead, lead])
                text.Append(CultureInfo.InvariantCulture, $"\t{Noisy(60 * Math.Sin(phase)):F1}\t{Noisy(90 * Math.Cos(2 * phase)):F1}\t{Noisy(-vertical):F1}\t{Noisy(vertical * 40):F0}\t{Noisy(vertical * 25):F0}\t{Noisy(3000 * Math.Sin(phase)):F0}");
            text.Append('\n');
        }

        return text.ToString();
    }

    private void Markers(string path)
    {
        var frames = (int)(seconds * CameraRate);
        var points = Landmarks.Select((label, marker) =>
        {
            var (x, y, z) = (new double[frames], new double[frames], new double[frames]);
            var reach = 900.0 / (1 + marker);
            for (var i = 0; i < frames; i++)
            {
                var angle = 2 * Math.PI * ((i / (double)frames) - ContactShare);
                (x[i], y[i], z[i]) = (Noisy(reach * Math.Sin(angle) + (30 * marker)), Noisy(200 - (reach * 0.3)), Noisy(1000 - (reach * Math.Cos(angle)) + (20 * marker)));
            }

            return new C3dPoint(label, x, y, z);
        }).ToArray();
        using var stream = File.Create(path);
        C3dWriter.Write(stream, new C3dRecording
        {
            RateHz = CameraRate,
            Points = points,
            AnalogSamples = 5,
            Analog = [new C3dAnalog("SOUND", "V", [.. Enumerable.Range(0, 5 * frames).Select(_ => Noisy(0))])],
            Events = [new("Takeaway", 0.2 * seconds), new("Contact", ContactShare * seconds)],
        }, new C3dStorage(C3dByteOrder.Intel, IsReal: false));
    }

    private double Noisy(double value) => value + _chance.NextDouble() - 0.5;
}
