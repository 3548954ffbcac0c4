using System.Diagnostics;
using System.Globalization;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Bench;

/// <summary>Writes and reads a table of 1.8 million rows and 35 columns, as a season of club-and-ball records would be.</summary>
internal static class TableTask
{
    private const int RowsPerGroup = 32_768;
    private const int Groups = 55;
    private const int Numbers = 24;

    /// <summary>First argument: an empty folder to work in.</summary>
    public static void Run(string[] arguments)
    {
        var table = Table();
        var groups = Enumerable.Range(0, 5).Select(seed => Rows(table, seed)).ToArray();
        var megabytes = groups.Average(Megabytes) * Groups;
        for (var round = 0; round < 3; round++)
        {
            var folder = new StudyFolder(Path.Combine(Path.GetFullPath(arguments[0]), string.Create(CultureInfo.InvariantCulture, $"round{round}")));
            var delta = new TableStore(folder).Table(table);
            var clock = Stopwatch.StartNew();
            var processor = Processor();
            using var writer = delta.NewFile("P01", "bench");
            for (var i = 0; i < Groups; i++)
                writer.Append(groups[i % groups.Length]);
            var file = writer.Complete();
            delta.Commit(new TableChange { Adds = [file], Info = new CommitInfo { Stage = "bench" } });
            var writing = clock.Elapsed.TotalSeconds;
            var writingProcessor = Processor() - processor;
            clock.Restart();
            processor = Processor();
            var rows = delta.Read().Sum(set => set.Count);
            var reading = clock.Elapsed.TotalSeconds;
            var readingProcessor = Processor() - processor;
            clock.Restart();
            var some = delta.Read(columns: ["struck_at", "number_3"]).Sum(set => set.Count);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"rows={rows} memory_mb={megabytes:F0} file_mb={file.Size / 1e6:F1} write_s={writing:F2} write_mb_s={megabytes / writing:F0} write_mb_per_core_s={megabytes / writingProcessor:F0} read_s={reading:F2} read_mb_s={megabytes / reading:F0} read_mb_per_core_s={megabytes / readingProcessor:F0} two_columns_s={clock.Elapsed.TotalSeconds:F2} of={some}"));
        }
    }

    /// <summary>Seconds that processors have worked for this process: a figure that a busy machine changes little.</summary>
    private static double Processor() => Environment.CpuUsage.TotalTime.TotalSeconds;

    private static TableDefinition Table() => new("captures", "one device record",
    [
        new("capture_id", ColumnKind.Text, "Capture"), new("source", ColumnKind.Text, "Source"), new("device", ColumnKind.Text, "Device"),
        new("participant", ColumnKind.Text, "Participant"), new("alias_hash", ColumnKind.Text, "Alias"), new("sequence", ColumnKind.Integer, "Sequence"),
        new("struck_at", ColumnKind.Instant, "Moment"), new("is_practice", ColumnKind.Boolean, "Practice"), new("original_sha256", ColumnKind.Text, "Original"),
        new("original_row", ColumnKind.Integer, "Row"), new("club", ColumnKind.Text, "Club"),
        .. Enumerable.Range(0, Numbers).Select(i => new ColumnDefinition($"number_{i}", ColumnKind.Number, "Number")),
    ], "participant");

    private static RowSet Rows(TableDefinition table, int seed)
    {
        var chance = new Random(seed);
        string[] clubs = ["driver", "7-iron", "wedge", "5-iron", "9-iron"];
        var hash = new string('a', 64);
        var columns = table.Columns.Select((column, position) => (Column)(column.Kind switch
        {
            ColumnKind.Text => new TextColumn(Filled(i => column.Name switch
            {
                "capture_id" => string.Create(CultureInfo.InvariantCulture, $"0f3a9b2c11de-{i + (seed * RowsPerGroup)}"),
                "club" => clubs[i / 40 % clubs.Length],
                "participant" => "P01",
                "source" or "device" => "sensor",
                _ => hash,
            })),
            ColumnKind.Integer => new IntegerColumn(Filled<long?>(i => i + (seed * RowsPerGroup))),
            ColumnKind.Boolean => new BooleanColumn(Filled<bool?>(i => i % 50 < 3)),
            ColumnKind.Instant => new InstantColumn(Filled(i => 1_788_000_000_000L + (i * 30_000L) + chance.Next(5000))),
            _ => new NumberColumn(Filled(i => chance.Next(40) == 0 ? double.NaN
                : Math.Round((40 * (1 + (position % 5))) + (4 * (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5)), 1 + (position % 3)) * (position % 2 == 0 ? 1 : 0.44704))),
        }));
        return new RowSet(table, [.. columns]);
    }

    private static T[] Filled<T>(Func<int, T> value) => [.. Enumerable.Range(0, RowsPerGroup).Select(value)];

    private static double Megabytes(RowSet rows) => rows.Columns.Sum(column => column switch
    {
        TextColumn text => text.Values.Sum(value => value?.Length ?? 0),
        BooleanColumn => column.Length,
        _ => column.Length * 8.0,
    }) / 1e6;
}
