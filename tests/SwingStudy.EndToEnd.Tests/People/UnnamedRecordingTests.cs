using System.Globalization;
using System.Text;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>Recordings that name nobody are a player's once their clock joins them to the player's swings, and go with the player.</summary>
public sealed class UnnamedRecordingTests
{
    private const string Plates = """
        source: plates
        title: Invented plate
        device: plate-1
        rows: recordings
        reader: delimited
        files: '.*\.txt'
        text: { encoding: utf-8, delimiter: "\t", decimal: '.' }
        layout: { preamble: 4, headings: 1, units_row: true }
        time: { parts: [{ preamble: '^Started: (?<value>.+)$' }], format: 'yyyy-MM-dd HH:mm:ss.f', zone: Europe/Berlin }
        recording:
          form: single
          clock: { column: t, unit: ms }
          rate: { preamble: '^Rate: (?<value>[0-9.]+) Hz', unit: Hz }
          trigger: { preamble: '^Trigger at: (?<value>[0-9.]+) ms', unit: ms }
          axes: { x: x, y: y, z: z }
          loads: on-player
        channels:
          lead_force_y: { column: Fy }
        """;

    [Fact]
    public void TheyGoWithThePlayerWhomTheirClockNames()
    {
        using var study = new TestStudy(SensorMapping.With(), Plates);
        foreach (var (player, code, hour) in new[] { ("Ada Invented", "P01", 10), ("Ben Invented", "P02", 14) })
        {
            study.Run("session", "add", code, "--start", $"2026-05-04 {hour - 1:00}:59", "--phase", "baseline").Expect(0);
            study.Drop($"bay/{code}.csv", "Player,Time,No,Speed\n" + string.Concat(Moments(hour).Select((moment, i) =>
                string.Create(CultureInfo.InvariantCulture, $"{player},{moment:yyyy-MM-dd HH:mm:ss},{i + 1},{41 + (0.1 * i):0.0}\n"))));
            foreach (var (moment, i) in Moments(hour).Select((moment, i) => (moment, i)))
                study.Drop(string.Create(CultureInfo.InvariantCulture, $"plates/{hour}_{i}.txt"), Recording(moment, $"mark-{code}-only"));
        }

        study.Ingest();

        // Nobody has joined anything yet: the erasure does, before it asks what is the player's.
        var erased = study.Run("people", "erase", "P01", "--yes", "--json").Expect(0).Json;
        Assert.Equal(9, erased.GetProperty("originals_gone").GetArrayLength());
        Assert.Equal(8, study.Query("SELECT capture_id FROM captures WHERE source = 'plates'").Count);
        Assert.Equal(8, study.Query("SELECT capture_id FROM links WHERE participant = 'P02' AND capture_id IN (SELECT capture_id FROM captures WHERE source = 'plates')").Count);
        Assert.Equal(8, study.Query("SELECT DISTINCT capture_id FROM curves WHERE channel = 'lead_force_y'").Count);
        Assert.Empty(Traces.Of(study.Root, ["mark-P01-only"], []));
        Assert.NotEmpty(Traces.Of(study.Root, ["mark-P02-only"], []));
        study.Run("audit", "verify", "--recompute").Expect(0);
    }

    /// <summary>Eight swings at unequal distances, so that one alignment of the clocks fits alone.</summary>
    private static IEnumerable<DateTime> Moments(int hour) => new[] { 0, 47, 101, 149, 222, 281, 333, 402 }.Select(seconds => new DateTime(2026, 5, 4, hour, 0, 0, DateTimeKind.Unspecified).AddSeconds(seconds));

    private static string Recording(DateTime struck, string mark)
    {
        var text = new StringBuilder($"{mark}\n");
        text.Append(CultureInfo.InvariantCulture, $"Started: {struck.AddSeconds(-1):yyyy-MM-dd HH:mm:ss.f}\nRate: 100 Hz\nTrigger at: 1000 ms\nt\tFy\nms\tN\n");
        for (var i = 0; i < 150; i++)
            text.Append(CultureInfo.InvariantCulture, $"{10 * i}\t{400 + (i % 7)}\n");
        return text.ToString();
    }
}
