using System.Globalization;
using NodaTime;
using NodaTime.Text;
using SwingStudy.App.Demo.Model;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>
/// Recordings of marker cameras, one C3D file a swing: 16-bit integers in millimetres, z up and x away from the target, who and when in parameters,
/// contact as an event; a marker is now and then hidden.
/// </summary>
internal static class MarkerExport
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "ceiling-cameras";

    /// <summary>Frames a second.</summary>
    public const int Rate = 200;

    private const double Before = -1.25;
    private const double After = 0.3;
    private const double Noise = 0.0006;

    private static readonly LocalDateTimePattern FileStamp = LocalDateTimePattern.CreateWithInvariantCulture("uuuuMMdd_HHmmss");
    private static readonly LocalDateTimePattern Began = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fff");

    private static readonly string[] Labels =
        ["HEAD", "SHAFT", "GRIP", "FWRIST", "FELBOW", "FSHOULD", "BSHOULD", "PELFF", "PELFB", "PELBK", "FHIP", "FKNEE", "FANKLE", "BHIP", "BKNEE", "BANKLE"];

    /// <summary>All files.</summary>
    public static IEnumerable<DemoFile> Files(IReadOnlyList<DemoStay> stays, ulong seed)
    {
        foreach (var stay in stays)
        {
            foreach (var session in stay.Sessions.Where(session => session.Player.Devices.HasFlag(MovementDevices.Markers)))
            {
                var chance = new Xoshiro256(seed).Split($"markers/{session.Player.Code}/{session.Number}");
                var clock = DeviceClock.Draw(DemoStudy.Zone.AtStrictly(stay.Start).ToInstant(), chance);
                var player = stay.Sessions.Count > 1 ? "-" : session.Player.Aliases[0];
                foreach (var swing in session.Swings.Where(_ => !chance.Happens(0.04)))
                {
                    var began = clock.Shows(swing.StruckAt + Duration.FromSeconds(Before)).InZone(DemoStudy.Zone).LocalDateTime;
                    yield return new(string.Create(CultureInfo.InvariantCulture, $"{Source}/{FileStamp.Format(began)}.c3d"), Bytes(swing, player, Began.Format(began), chance));
                }
            }
        }
    }

    private static byte[] Bytes(DemoSwing swing, string player, string began, Xoshiro256 chance)
    {
        var frames = (int)Math.Round((After - Before) * Rate);
        var points = Labels.Select(label => new C3dPoint(label, new double[frames], new double[frames], new double[frames])).ToArray();
        for (var frame = 0; frame < frames; frame++)
        {
            var places = swing.Movement.Points(Before + (frame / (double)Rate));
            for (var i = 0; i < points.Length; i++)
                Write(points[i], frame, places[i], chance);
        }

        foreach (var point in points.Where(_ => chance.Happens(0.1)))
            Hide(point, chance.NextIndex(frames - 8), 2 + chance.NextIndex(6));
        using var stream = new MemoryStream();
        C3dWriter.Write(stream, new C3dRecording
        {
            RateHz = Rate,
            Points = points,
            Events = swing.IsPractice ? [] : [new("STRIKE", -Before)],
            Texts = new Dictionary<(string, string), IReadOnlyList<string>>
            {
                [("SUBJECTS", "NAMES")] = [player],
                [("RECORDING", "BEGAN")] = [began],
            },
        }, new C3dStorage(C3dByteOrder.Intel, IsReal: false));
        return stream.ToArray();
    }

    /// <summary>Device axes: x away from the target, y to the right when facing it, z up.</summary>
    private static void Write(C3dPoint point, int frame, Point3 place, Xoshiro256 chance)
    {
        point.X[frame] = 1000 * (-place.X + (Noise * chance.Normal()));
        point.Y[frame] = 1000 * (place.Z + (Noise * chance.Normal()));
        point.Z[frame] = 1000 * (place.Y + (Noise * chance.Normal()));
    }

    private static void Hide(C3dPoint point, int from, int count)
    {
        foreach (var values in new[] { point.X, point.Y, point.Z })
            values.AsSpan(from, count).Fill(double.NaN);
    }
}
