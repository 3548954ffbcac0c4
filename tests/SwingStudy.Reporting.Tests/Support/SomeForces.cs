using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Tables;
using SwingStudy.Reporting.Rows;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Reporting.Tests.Support;

/// <summary>
/// The invented study with vertical forces of P01: body weight but for a bump whose peak lies at a known moment, 60 ms before impact in the baseline and
/// 100 ms with the cue; a few swings of another player, a swing that does not count, and another channel.
/// </summary>
internal static class SomeForces
{
    public const double PeakBefore = -0.060;
    public const double PeakAfter = -0.100;
    public const double Peak = 1.6;

    /// <summary>The report, its curves and events read from real tables in a folder that is removed again.</summary>
    public static StudyReport Report()
    {
        var folder = Directory.CreateTempSubdirectory("forces-");
        try
        {
            var store = new TableStore(new(folder.FullName), TimeProvider.System);
            Store(store, StudyTables.SwingCurves, Curves());
            Store(store, StudyTables.SwingEvents, Events());
            var report = Some.Report();
            return report with { Tables = report.Tables with { SwingCurves = MovementRows.Curves(store), SwingEvents = MovementRows.Events(store) } };
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Store(TableStore store, TableDefinition definition, RowSet rows)
    {
        var table = store.Table(definition);
        using var writer = table.NewFile("P01", "P01");
        writer.Append(rows);
        Assert.True(table.Commit(new TableChange { Adds = [writer.Complete()], Info = new() { Stage = "test" } }).Succeeded(out _));
    }

    private static RowSet Curves()
    {
        var rows = new RowSetBuilder(StudyTables.SwingCurves);
        foreach (var swing in Some.Report().Tables.Swings["club_head_speed"].Where(swing => swing.Participant == "P01"))
        {
            Add(rows, swing.SwingId, SwingChannels.VerticalForce, swing.Phase == "baseline" ? PeakBefore : PeakAfter);
            Add(rows, swing.SwingId, "lead_force_y", 0.2);
        }

        return rows.Build();
    }

    private static void Add(RowSetBuilder rows, string swing, string channel, double peak) => rows.Add(
        ("swing_id", swing), ("participant", "P01"), ("channel", channel), ("unit", "{BW}"), ("sample_rate_hz", 500.0), ("t0_s", -1.2),
        ("values", Enumerable.Range(0, 801).Select(i => 1 + ((Peak - 1) * Math.Exp(-Math.Pow(((i / 500.0) - 1.2 - peak) / 0.08, 2)))).ToArray()), ("method", "test"));

    private static RowSet Events()
    {
        var rows = new RowSetBuilder(StudyTables.SwingEvents);
        foreach (var swing in Some.Report().Tables.Swings["club_head_speed"].Where(swing => swing.Participant == "P01"))
        {
            foreach (var (name, time) in new[] { ("start", -0.95), ("top", -0.24), ("grip_peak", -0.08) })
                rows.Add(("swing_id", swing.SwingId), ("participant", "P01"), ("event", name), ("time_s", time), ("method", "test"), ("confidence", 1.0));
        }

        return rows.Build();
    }
}
