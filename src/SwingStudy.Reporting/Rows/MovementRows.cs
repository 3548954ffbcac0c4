using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Reporting.Rows;

/// <summary>Rows of single swings over time.</summary>
internal static class MovementRows
{
    /// <summary>The channel that a report draws swing by swing.</summary>
    public const string VerticalForce = SwingChannels.VerticalForce;

    /// <summary>The curves of that channel.</summary>
    public static IReadOnlyList<SwingCurveRow> Curves(TableStore store)
    {
        var table = store.Table(StudyTables.SwingCurves);
        return table.CurrentVersion < 0 ? [] : [.. table.Read().SelectMany(CurvesOf)];
    }

    /// <summary>Events.</summary>
    public static IReadOnlyList<SwingEventRow> Events(TableStore store)
    {
        var table = store.Table(StudyTables.SwingEvents);
        return table.CurrentVersion < 0 ? [] : [.. table.Read(columns: ["swing_id", "participant", "event", "time_s"]).SelectMany(EventsOf)];
    }

    private static IEnumerable<SwingCurveRow> CurvesOf(RowSet set)
    {
        var (ids, people, channels, units) = (set.Texts("swing_id"), set.Texts("participant"), set.Texts("channel"), set.Texts("unit"));
        var (rates, firsts, values) = (set.Numbers("sample_rate_hz"), set.Numbers("t0_s"), ((NumberListColumn)set["values"]).Values);
        return Enumerable.Range(0, set.Count).Where(i => channels[i] == VerticalForce && values[i] is not null)
            .Select(i => new SwingCurveRow(ids[i] ?? "", people[i] ?? "", VerticalForce, units[i], rates[i], firsts[i], values[i]!));
    }

    private static IEnumerable<SwingEventRow> EventsOf(RowSet set)
    {
        var (ids, people, events, times) = (set.Texts("swing_id"), set.Texts("participant"), set.Texts("event"), set.Numbers("time_s"));
        return Enumerable.Range(0, set.Count).Select(i => new SwingEventRow(ids[i] ?? "", people[i] ?? "", events[i] ?? "", times[i]));
    }
}
