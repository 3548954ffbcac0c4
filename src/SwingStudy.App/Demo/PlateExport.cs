using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>
/// Exports of the force plates: all recordings of a stay below each other in one text, tabs and decimal commas, who and when on the first line of
/// each recording only; a recording of standing still first; beside it a file of the empty plates.
/// </summary>
internal static class PlateExport
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "floor-plates";

    /// <summary>A recording reaches from here to <see cref="After"/>, seconds from impact.</summary>
    private const double Before = -1.3;
    private const double After = 0.5;

    private const double QuietSeconds = 1.2;
    private const double ZeroSeconds = 0.3;
    private const string Headings = "rec\tplayer\tbegan\thit\tms\tN.Fx\tN.Fy\tN.Fz\tN.Mx\tN.My\tN.Mz\tF.Fx\tF.Fy\tF.Fz\tF.Mx\tF.My\tF.Mz\r\n";
    private const string Units = "\t\t\tms\tms\tN\tN\tN\tN.m\tN.m\tN.m\tN\tN\tN\tN.m\tN.m\tN.m\r\n";

    private static readonly LocalDateTimePattern FileStamp = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd_HHmm");
    private static readonly LocalDateTimePattern Began = LocalDateTimePattern.CreateWithInvariantCulture("dd.MM.uuuu HH:mm:ss.fff");
    private static readonly CultureInfo Comma = DecimalComma();

    /// <summary>All files.</summary>
    /// <param name="stays">The stays; those without a player on the plates have no file.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <param name="counts">How many recordings are of swings, and how many of none.</param>
    public static IReadOnlyList<DemoFile> Files(IReadOnlyList<DemoStay> stays, ulong seed, out (int Swings, int False) counts)
    {
        var files = new List<DemoFile>();
        counts = (0, 0);
        foreach (var stay in stays.Where(stay => stay.Sessions.Any(session => session.Player.Devices.HasFlag(MovementDevices.Plates))))
        {
            var name = FileStamp.Format(stay.Start);
            var chance = new Xoshiro256(seed).Split($"plates/{name}");
            var station = new PlateStation(chance.Split("station"));
            var recordings = Recordings(stay, chance).OrderBy(recording => recording.Began).ToList();
            counts = (counts.Swings + recordings.Count(recording => recording.Hit is not null), counts.False + recordings.Count(recording => recording.IsFalse));
            files.Add(new($"{Source}/empty {name}.tsv", Text(stay, station, [new(null, "", recordings[0].Began - Duration.FromSeconds(40), null, 0, ZeroSeconds, false)])));
            files.Add(new($"{Source}/floor {name}.tsv", Text(stay, station, recordings)));
        }

        return files;
    }

    private static IEnumerable<PlateRecording> Recordings(DemoStay stay, Xoshiro256 chance)
    {
        var clock = DeviceClock.Draw(DemoStudy.Zone.AtStrictly(stay.Start).ToInstant(), chance);
        var turns = stay.Sessions.Count > 1;
        foreach (var session in stay.Sessions)
        {
            var player = turns ? "-" : session.Player.Aliases[0];
            yield return new(session.Swings[0].Movement, session.Player.Aliases[0], clock.Shows(session.Swings[0].StruckAt - Duration.FromSeconds(16)), null, -3, QuietSeconds, false);
            foreach (var swing in session.Swings.Where(_ => !chance.Happens(0.04)))
            {
                var began = clock.Shows(swing.StruckAt + Duration.FromSeconds(Before));
                yield return new(swing.Movement, player, began, (-1000 * Before) + (3 * chance.Normal()) + (chance.Happens(0.02) ? 25 : 0), Before, After - Before, false);
            }

            // Somebody taps the mat between two swings: the plates record a player who only stands.
            if (chance.Happens(0.3))
                yield return new(session.Swings[0].Movement, player, clock.Shows(session.Swings[4].StruckAt + Duration.FromSeconds(11)), -1000 * Before, -5, After - Before, true);
        }
    }

    private static byte[] Text(DemoStay stay, PlateStation station, List<PlateRecording> recordings)
    {
        var text = new StringBuilder();
        text.Append("Floor station, two plates: N near the target, F far from it; reactions on the player\r\n");
        text.Append(CultureInfo.InvariantCulture, $"Rate\t{PlateStation.Rate} Hz\r\n");
        text.Append(CultureInfo.InvariantCulture, $"Stay\t{FileStamp.Format(stay.Start)}\r\n");
        text.Append(Headings).Append(Units);
        for (var number = 0; number < recordings.Count; number++)
            Append(text, station, recordings[number], number + 1);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Append(StringBuilder text, PlateStation station, PlateRecording recording, int number)
    {
        var samples = (int)Math.Round(recording.Seconds * PlateStation.Rate);
        for (var i = 0; i < samples; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{number}\t");
            if (i == 0)
                text.Append(Comma, $"{recording.Player}\t{Began.Format(recording.Began.InZone(DemoStudy.Zone).LocalDateTime)}\t{recording.Hit:0.0}\t");
            else
                text.Append("\t\t\t");
            text.Append(CultureInfo.InvariantCulture, $"{i * 1000 / PlateStation.Rate}");
            var sample = station.Sample(recording.Movement, recording.From + (i / (double)PlateStation.Rate));
            for (var channel = 0; channel < sample.Length; channel++)
            {
                if (channel % 6 < 3)
                    text.Append(Comma, $"\t{sample[channel]:0.0}");
                else
                    text.Append(Comma, $"\t{sample[channel]:0.00}");
            }

            text.Append("\r\n");
        }
    }

    private static CultureInfo DecimalComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        return CultureInfo.ReadOnly(culture);
    }
}
