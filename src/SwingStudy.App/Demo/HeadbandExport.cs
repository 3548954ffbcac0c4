using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>A wearable's stream of attention: one JSON object a line, a reading every other second, -1 while the band is loose.</summary>
internal static class HeadbandExport
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "headband";

    private static readonly OffsetDateTimePattern At = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fffo<+HH:mm>");

    /// <summary>One file a day.</summary>
    public static IEnumerable<DemoFile> Files(IReadOnlyList<DemoStay> stays, ulong seed)
    {
        foreach (var day in stays.GroupBy(stay => stay.Start.Date))
        {
            var text = new StringBuilder();
            foreach (var session in day.SelectMany(stay => stay.Sessions))
                Append(text, session, new Xoshiro256(seed).Split($"headband/{session.Player.Code}/{session.Number}"));
            yield return new(string.Create(CultureInfo.InvariantCulture, $"{Source}/stream_{day.Key:uuuu-MM-dd}.ndjson"), Encoding.UTF8.GetBytes(text.ToString()));
        }
    }

    private static void Append(StringBuilder text, DemoSession session, Xoshiro256 chance)
    {
        var level = 0.0;
        var looseFor = 0;
        var end = session.Swings[^1].StruckAt + Duration.FromSeconds(8);
        for (var at = session.Swings[0].StruckAt - Duration.FromSeconds(12); at < end; at += Duration.FromMilliseconds(1950 + chance.NextIndex(100)))
        {
            level = (0.8 * level) + (3 * chance.Normal());
            looseFor = looseFor > 0 ? looseFor - 1 : chance.Happens(0.004) ? 8 : 0;
            var reading = looseFor > 0 ? -1 : (int)Math.Clamp(Math.Round(session.Attention + level), 0, 100);
            var fit = looseFor > 0 ? "loose" : "good";
            text.Append(
                CultureInfo.InvariantCulture,
                $$$"""{"at":"{{{At.Format(at.InZone(DemoStudy.Zone).ToOffsetDateTime())}}}","wearer":{"tag":"{{{session.Player.Aliases[0]}}}"},"attention":{{{reading}}},"fit":"{{{fit}}}"}""");
            text.Append('\n');
        }
    }
}
