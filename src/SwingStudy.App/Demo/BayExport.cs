using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace SwingStudy.App.Demo;

/// <summary>
/// Exports of the bay's club-and-ball sensor, whose menu stands in German: Windows-1252, semicolons, decimal commas, lines before the headings, a row
/// of units (which somebody changes for a day), averages below; parts, copies and a corrected export.
/// </summary>
internal static class BayExport
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "bay-sensor";

    /// <summary>Stays, counted from 0, whose export comes in two parts.</summary>
    private static readonly int[] InParts = [4, 29, 61];

    /// <summary>Stays whose export was also dropped as a copy.</summary>
    private static readonly int[] Copied = [9, 40];

    /// <summary>Stays whose numbering starts again halfway.</summary>
    private static readonly int[] Restarted = [2, 17, 52];

    /// <summary>Day on which the display stood at miles an hour.</summary>
    private static readonly LocalDate MilesDay = new(2026, 3, 19);

    private static readonly LocalDateTimePattern FileStamp = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd_HH-mm");
    private static readonly LocalDateTimePattern RowStamp = LocalDateTimePattern.CreateWithInvariantCulture("dd.MM.uuuu';'HH:mm:ss");
    private static readonly LocalDateTimePattern Exported = LocalDateTimePattern.CreateWithInvariantCulture("dd.MM.uuuu HH:mm");
    private static readonly CultureInfo Comma = DecimalComma();

    /// <summary>The stay whose export is made again with mended values: the first with a misread that comes in one piece.</summary>
    public static int CorrectedStay(IReadOnlyList<DemoStay> stays) => Enumerable.Range(0, stays.Count).First(i =>
        !InParts.Contains(i) && !Copied.Contains(i) && Rows(stays[i]).Any(row => row.Swing.Misread != Misread.None));

    /// <summary>All files.</summary>
    public static IEnumerable<DemoFile> Files(IReadOnlyList<DemoStay> stays)
    {
        var corrected = CorrectedStay(stays);
        for (var i = 0; i < stays.Count; i++)
        {
            var rows = Rows(stays[i]);
            var name = $"messung_{FileStamp.Format(stays[i].Start)}";
            var restartAt = Restarted.Contains(i) ? rows.Count / 2 : -1;
            if (InParts.Contains(i))
            {
                var half = rows.Count / 2;
                yield return Make($"{name}_teil1", stays[i], rows, 0, half, restartAt, false);
                yield return Make($"{name}_teil2", stays[i], rows, half, rows.Count, restartAt, false);
                continue;
            }

            var file = Make(name, stays[i], rows, 0, rows.Count, restartAt, false);
            yield return file;
            if (Copied.Contains(i))
                yield return file with { Path = $"{Source}/Kopie von {name}.csv" };
            if (i == corrected)
                yield return Make($"{name}_korrigiert", stays[i], rows, 0, rows.Count, restartAt, true);
        }
    }

    /// <summary>Rows that the sensor wrote of a stay, in order of time.</summary>
    public static IReadOnlyList<(DemoSession Session, DemoSwing Swing)> Rows(DemoStay stay) =>
    [
        .. stay.Sessions.SelectMany(session => session.Swings.Where(swing => !swing.MissedByBay).Select(swing => (session, swing)))
            .OrderBy(row => row.swing.StruckAt),
    ];

    private static DemoFile Make(
        string name, DemoStay stay, IReadOnlyList<(DemoSession Session, DemoSwing Swing)> rows, int from, int to, int restartAt, bool mended)
    {
        var miles = stay.Start.Date == MilesDay;
        var speed = miles ? "mph" : "km/h";
        var scale = miles ? 1 / 0.44704 : 3.6;
        var text = new StringBuilder();
        text.Append(Comma, $"Messbericht „{DemoStudy.Academy}“;Bucht Nord;erstellt {Exported.Format(stay.Start.PlusMinutes(22))}\r\n");
        text.Append(Comma, $"Spielerliste: {string.Join(" + ", stay.Sessions.Select(session => session.Player.Aliases[0]))}\r\n");
        text.Append(Comma, $"Raum {stay.Sessions[0].Temperature:0.0} °C – Matte – Ortszeit\r\n");
        text.Append("\r\n");
        text.Append("Lfd;Spieler;Datum;Uhrzeit;Schläger;Schlägerkopf;Ball;Verhältnis;Start hoch;Start seitlich;Drall;Flug;Eintreffwinkel;Bemerkung\r\n");
        text.Append(Comma, $";;;;;[{speed}];[{speed}];[-];[°];[°];[U/min];[m];[°];\r\n");
        double clubs = 0, balls = 0;
        var hit = 0;
        for (var i = from; i < to; i++)
        {
            var (session, swing) = rows[i];
            var club = (swing.ClubSpeed + swing.BayNoise) * (swing.Misread == Misread.ClubLow && !mended ? 0.68 : 1);
            var ball = swing.BallSpeed * (swing.Misread == Misread.BallDoubled && !mended ? 2 : 1);
            var number = i - (restartAt >= 0 && i >= restartAt ? restartAt : 0) + 1;
            var time = RowStamp.Format(swing.StruckAt.InZone(DemoStudy.Zone).LocalDateTime);
            text.Append(Comma, $"{number};{session.Player.Aliases[0]};{time};Holz 1;{club * scale:0.0};");
            if (swing.IsPractice)
            {
                text.Append("--;--;--;--;--;--;--;Probeschwung\r\n");
                continue;
            }

            hit++;
            clubs += club * scale;
            balls += ball * scale;
            var remark = i == from + 5 ? "\"Linie; dann links\"" : "";
            text.Append(Comma, $"{ball * scale:0.0};{ball / club:0.00};{swing.LaunchAngle:0.0};{swing.LaunchDirection:0.0};{swing.Spin:0};");
            text.Append(Comma, $"{swing.Carry:0.0};{swing.AttackAngle:0.0};{remark}\r\n");
        }

        if (hit > 0)
            text.Append(Comma, $"Mittel;;;;;{clubs / hit:0.0};{balls / hit:0.0};{balls / clubs:0.00};;;;;;\r\n");
        text.Append("Ende des Berichts\r\n");
        return new($"{Source}/{name}.csv", CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text.ToString()));
    }

    private static CultureInfo DecimalComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        return CultureInfo.ReadOnly(culture);
    }
}
