using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Storage.Tests.Support;

/// <summary>Small invented data.</summary>
internal static class Some
{
    public static CommitInfo Info { get; } = new() { Stage = "test" };

    public static TableDefinition Swings { get; } = new("swings", "one swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("participant", ColumnKind.Text, "Participant"),
        new("club_speed", ColumnKind.Number, "Club speed", "m/s"),
        new("sequence", ColumnKind.Integer, "Order"),
        new("included", ColumnKind.Boolean, "Counts"),
        new("struck_at", ColumnKind.Instant, "Moment of impact"),
        new("force", ColumnKind.NumberList, "Force", "N"),
    ], "participant");

    public static RowSet Rows(string? participant, int count, double start = 40)
    {
        var rows = new RowSetBuilder(Swings);
        for (var i = 0; i < count; i++)
        {
            rows.Add(("swing_id", $"{participant}-{i}"), ("participant", participant), ("club_speed", i % 5 == 4 ? null : start + (i * 0.25)),
                ("sequence", i), ("included", i % 3 == 0 ? null : i % 2 == 0), ("struck_at", 1_788_000_000_000L + (i * 30_000L)),
                ("force", i % 4 == 3 ? null : new[] { i, double.NaN, i + 0.5 }));
        }

        return rows.Build();
    }

    public static DataFile File(this DeltaTable table, string? participant, string unit, RowSet rows)
    {
        using var writer = table.NewFile(participant, unit);
        writer.Append(rows);
        return writer.Complete();
    }

    public static long Add(this DeltaTable table, params DataFile[] files) => Value(table.Commit(new TableChange { Adds = files, Info = Info }));

    public static T Value<T>(Outcome<T> outcome)
        where T : notnull => outcome.Succeeded(out var value) ? value : throw new InvalidOperationException(string.Join('\n', outcome.Problems));

    public static Problem Problem<T>(Outcome<T> outcome)
        where T : notnull => Assert.Single(outcome.Problems);

    public static string Text(this RowSet rows) => string.Join('\n', Enumerable.Range(0, rows.Count).Select(row => string.Join('|',
        rows.Columns.Select(column => column.IsMissing(row) ? "-" : column switch
        {
            TextColumn text => text.Values[row],
            NumberColumn numbers => BitConverter.DoubleToInt64Bits(numbers.Values[row]).ToString("x", System.Globalization.CultureInfo.InvariantCulture),
            IntegerColumn integers => integers.Values[row]!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture),
            BooleanColumn booleans => booleans.Values[row]!.Value.ToString(),
            InstantColumn instants => instants.UnixMillis[row].ToString(System.Globalization.CultureInfo.InvariantCulture),
            NumberListColumn lists => string.Join(',', lists.Values[row]!.Select(v => v.ToString("R", System.Globalization.CultureInfo.InvariantCulture))),
            _ => throw new InvalidOperationException(),
        }))));
}
