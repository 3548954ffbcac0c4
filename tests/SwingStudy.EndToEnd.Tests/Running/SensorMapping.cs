namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>The mapping of an invented sensor; its parts can be exchanged one by one.</summary>
internal static class SensorMapping
{
    /// <summary>Writes the mapping.</summary>
    /// <param name="more">Further lines at its end.</param>
    /// <param name="time">The rule for times.</param>
    /// <param name="speed">Where the speed of the club stands.</param>
    /// <param name="reader">The reader.</param>
    /// <param name="source">Name of the source, and of its device.</param>
    public static string With(
        string more = "",
        string time = "{ parts: [{ column: Time }], format: 'yyyy-MM-dd HH:mm:ss', zone: Europe/Berlin }",
        string speed = "{ column: Speed, unit: m/s }",
        string reader = "delimited",
        string source = "bay") => $$"""
        source: {{source}}
        title: Invented sensor
        device: {{source}}-1
        rows: swings
        reader: {{reader}}
        files: '.*\.(csv|xlsx)'
        participant: { column: Player }
        time: {{time}}
        sequence: { column: No }
        values:
          club_head_speed: {{speed}}
        {{more}}
        """;

    /// <summary>Rows of one player, a minute apart, as the sensor writes them.</summary>
    public static string Rows(int count = 3, string day = "2026-05-04", double first = 41, int from = 0) => string.Concat(Enumerable.Range(from, count)
        .Select(i => FormattableString.Invariant($"Ada Invented,{day} {10 + (i / 60)}:{i % 60:00}:00,{i + 1},{first + (0.25 * i):0.00}\n")));

    /// <summary>A whole file of one player.</summary>
    public static string File(int count = 3, string day = "2026-05-04", double first = 41, int from = 0) => "Player,Time,No,Speed\n" + Rows(count, day, first, from);
}
