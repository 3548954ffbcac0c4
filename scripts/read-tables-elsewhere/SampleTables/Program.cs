// Writes a small invented study with 13 versions of one table (a checkpoint among them, a column that came later, replaced files) and
// prints what another engine must find in its oldest and newest version.
using System.Text.Json;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

var store = new TableStore(new StudyFolder(Path.GetFullPath(args[0])));
var info = new CommitInfo { Stage = "sample" };
var shape = new TableDefinition("swings", "one swing",
[
    new("swing_id", ColumnKind.Text, "Swing"), new("participant", ColumnKind.Text, "Participant"), new("club_speed", ColumnKind.Number, "Club speed", "m/s"),
    new("sequence", ColumnKind.Integer, "Order"), new("included", ColumnKind.Boolean, "Counts"), new("struck_at", ColumnKind.Instant, "Moment of impact"),
    new("force", ColumnKind.NumberList, "Force", "N"),
], "participant");

for (var i = 0; i < 12; i++)
{
    if (i == 5)
        shape = shape with { Columns = [.. shape.Columns, new("ball_speed", ColumnKind.Number, "Ball speed", "m/s")] };
    var table = store.Table(shape);
    string? participant = i % 4 == 3 ? null : $"P0{(i % 4) + 1}";
    table.Commit(new TableChange { Adds = [Write(table, participant, $"session {i}", 100 * (i + 1))], Info = info });
}

var last = store.Table(shape);
last.Commit(new TableChange { Adds = [Write(last, "P01", "session 0", 10)], ReplacedUnits = ["session 0"], Info = info });
Console.WriteLine(JsonSerializer.Serialize(new { table = last.Root, versions = new[] { Facts(last, 0), Facts(last, last.CurrentVersion) } }));

static DataFile Write(DeltaTable table, string? participant, string unit, int count)
{
    using var writer = table.NewFile(participant, unit);
    for (var start = 0; start < count; start += 250)
    {
        var rows = new RowSetBuilder(table.Definition);
        for (var i = start; i < Math.Min(count, start + 250); i++)
        {
            rows.Add(("swing_id", i % 10 == 0 ? $"Zürich 球 {i}" : $"{unit}-{i}"), ("participant", participant), ("club_speed", i % 7 == 0 ? null : 40 + (i * 0.25)),
                ("sequence", i), ("included", i % 3 == 0 ? null : i % 2 == 0), ("struck_at", 1_788_000_000_000L + (i * 1_001L)),
                ("force", i % 4 == 3 ? null : new[] { i, double.NaN, 0.5 }));
        }

        writer.Append(rows.Build());
    }

    return writer.Complete();
}

static object Facts(DeltaTable table, long version)
{
    var rows = table.Read(version).ToList();
    long Count(Func<RowSet, int, bool> holds) => rows.Sum(set => Enumerable.Range(0, set.Count).LongCount(row => holds(set, row)));
    var numbers = rows.SelectMany(set => set.Numbers("club_speed")).Where(double.IsFinite).ToList();
    return new
    {
        version,
        rows = rows.Sum(set => (long)set.Count),
        columns = table.DefinitionAt(version).Columns.Count,
        withSpeed = numbers.Count,
        sumOfSpeed = numbers.Sum(),
        ofP01 = Count((set, row) => set.Texts("participant")[row] == "P01"),
        ofNobody = Count((set, row) => set.Texts("participant")[row] is null),
        included = Count((set, row) => set.Booleans("included")[row] == true),
        named = Count((set, row) => set.Texts("swing_id")[row] == "Zürich 球 50"),
        struckFrom = "2026-08-29 10:40:50.050",
        struckTo = "2026-08-29 10:40:52.052",
        struckBetween = Count((set, row) => set.Instants("struck_at")[row] is >= 1_788_000_050_050 and <= 1_788_000_052_052),
        withForce = Count((set, row) => !set["force"].IsMissing(row)),
    };
}
