using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>Exports of a speed gate: one JSON document a day, metres a second, a clock of its own, players by the code typed on its pad, and passes without a swing.</summary>
internal static class GateExport
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "speed-gate";

    private static readonly LocalDateTimePattern Clock = LocalDateTimePattern.CreateWithInvariantCulture("uuuu/MM/dd HH:mm:ss.fff");
    private static readonly JsonWriterOptions Indented = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>All files, and how many passes were no swing.</summary>
    public static IReadOnlyList<DemoFile> Files(IReadOnlyList<DemoStay> stays, ulong seed, out int falsePasses)
    {
        var files = new List<DemoFile>();
        falsePasses = 0;
        foreach (var day in stays.GroupBy(stay => stay.Start.Date))
        {
            var chance = new Xoshiro256(seed).Split(string.Create(CultureInfo.InvariantCulture, $"gate/{day.Key:uuuu-MM-dd}"));
            var behind = chance.Between(-14, 9);
            var drift = chance.Between(-30e-6, 30e-6);
            var opened = day.Min(stay => DemoStudy.Zone.AtStrictly(stay.Start).ToInstant());
            var passes = new List<(Instant At, string Pad, double Speed, double Quality)>();
            foreach (var session in day.SelectMany(stay => stay.Sessions))
            {
                foreach (var swing in session.Swings.Where(swing => !swing.MissedByGate))
                    passes.Add((swing.StruckAt, session.Player.Aliases[1], swing.ClubSpeed + swing.GateNoise, chance.Between(0.82, 0.99)));
                if (!chance.Happens(0.25))
                    continue;
                falsePasses++;
                passes.Add((session.Swings[4].StruckAt + Duration.FromSeconds(11), session.Player.Aliases[1], chance.Between(6, 14), chance.Between(0.2, 0.5)));
            }

            using var bytes = new MemoryStream();
            using (var json = new Utf8JsonWriter(bytes, Indented))
            {
                json.WriteStartObject();
                json.WriteString("gate", "mat edge");
                json.WriteString("clock_set", "by hand");
                json.WriteStartArray("passes");
                var number = 0;
                foreach (var (at, pad, speed, quality) in passes.OrderBy(pass => pass.At))
                {
                    var shift = behind + (drift * (at - opened).TotalSeconds);
                    var shown = at + Duration.FromMilliseconds((long)Math.Round(1000 * shift));
                    json.WriteStartObject();
                    json.WriteNumber("n", ++number);
                    json.WriteString("clock", Clock.Format(shown.InZone(DemoStudy.Zone).LocalDateTime));
                    json.WriteString("pad", pad);
                    json.WriteStartObject("head");
                    json.WriteNumber("speed", Math.Round(speed, 2));
                    json.WriteEndObject();
                    json.WriteNumber("quality", Math.Round(quality, 2));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            files.Add(new(string.Create(CultureInfo.InvariantCulture, $"{Source}/passes-{day.Key:uuuuMMdd}.json"), bytes.ToArray()));
        }

        return files;
    }
}
