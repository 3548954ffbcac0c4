namespace SwingStudy.Ingestion.Suggest;

/// <summary>A role that a column may have.</summary>
/// <param name="Column">The column.</param>
/// <param name="Role">The role.</param>
/// <param name="Confidence">0 to 1.</param>
/// <param name="Reason">What it rests on.</param>
internal sealed record RoleMatch(ColumnProfile Column, ColumnRole Role, double Confidence, string Reason)
{
    private const double Clear = 0.7;
    private static readonly string[] PlainNumbers = ["excel-serial", "unix-s", "unix-ms", "yyyyMMdd", "yyyyMMddHHmmss"];

    /// <summary>All roles of a column worth thinking of.</summary>
    public static IEnumerable<RoleMatch> Of(ColumnProfile column, int rows)
    {
        if (column.Filled == column.Missing)
            yield break;
        if (Participant(column, rows) is { } participant)
            yield return participant;
        if (Time(column) is { } time)
            yield return time;
        if (Sequence(column) is { } sequence)
            yield return sequence;
        var phase = RoleWords.Likeness(column, ColumnRole.Phase);
        if (phase >= 0.85 && !column.IsNumeric && column.Texts.Count <= 12)
            yield return new(column, ColumnRole.Phase, Math.Round(0.9 * phase, 2), "heading names the phase; few different texts");
    }

    private static RoleMatch? Participant(ColumnProfile column, int rows)
    {
        var likeness = RoleWords.Likeness(column, ColumnRole.Participant);
        if (likeness < Clear || column.Dates > 0 || (column.IsNumeric && likeness < 0.95))
            return null;
        var repeats = column.Texts.Count <= Math.Max(3, rows / 2);
        return new(column, ColumnRole.Participant, Math.Round((0.8 * likeness) + (repeats ? 0.15 : 0), 2), repeats ? "heading names a person; names repeat" : "heading names a person");
    }

    private static RoleMatch? Sequence(ColumnProfile column)
    {
        var likeness = RoleWords.Likeness(column, ColumnRole.Sequence);
        if (likeness < Clear || !column.IsNumeric)
            return null;
        return column.Counts
            ? new(column, ColumnRole.Sequence, Math.Round((0.75 * likeness) + 0.2, 2), "heading names a count; numbers go up by one")
            : new(column, ColumnRole.Sequence, Math.Round(0.7 * likeness, 2), "heading names a count");
    }

    private static RoleMatch? Time(ColumnProfile column)
    {
        var moment = RoleWords.Likeness(column, ColumnRole.Moment);
        var date = RoleWords.Likeness(column, ColumnRole.Date);
        var clock = RoleWords.Likeness(column, ColumnRole.TimeOfDay);
        var likeness = Math.Max(moment, Math.Max(date, clock));
        if (column.IsClock || (clock >= Clear && column.IsDottedClock))
            return new(column, ColumnRole.TimeOfDay, likeness >= Clear ? 0.97 : 0.7, "cells are times of day");
        if (column.Dates > 0 && column.Dates * 10 >= (column.Filled - column.Missing) * 8)
            return Dated(column, likeness);
        var formats = column.TimeFormats.Select(format => format.Text).Where(text => !PlainNumbers.Contains(text) || text == "unix-ms" || likeness >= Clear).ToList();
        if (formats.Count == 0)
            return null;
        var reason = formats.Count == 1 ? $"all cells fit {formats[0]}" : $"all cells fit {string.Join(" and ", formats)}";
        var hasHour = formats.Exists(text => text.Contains('H', StringComparison.Ordinal) || text.Contains("hh", StringComparison.Ordinal) || text.StartsWith("unix", StringComparison.Ordinal))
            || (formats.Contains("iso") && column.Texts.Keys.Any(text => text.Contains(':', StringComparison.Ordinal)))
            || (formats.Contains("excel-serial") && moment >= Clear);
        return new(column, hasHour ? ColumnRole.Moment : ColumnRole.Date, likeness >= Clear ? 0.96 : 0.75, reason);
    }

    private static RoleMatch Dated(ColumnProfile column, double likeness) =>
        new(column, column.HasTimeOfDay ? ColumnRole.Moment : ColumnRole.Date, likeness >= Clear ? 0.97 : 0.75, "workbook cells with a date style");
}
