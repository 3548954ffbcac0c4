using NodaTime.Text;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Export;

/// <summary>The registry's sessions as a table, so that an export holds the conditions of each swing's session.</summary>
internal static class SessionTable
{
    /// <summary>Its columns.</summary>
    public static TableDefinition Definition { get; } = new("sessions", "one player on one occasion in one phase",
    [
        new("session", ColumnKind.Text, "Session"),
        new("participant", ColumnKind.Text, "Participant"),
        new("started_at", ColumnKind.Instant, "Start"),
        new("started_local", ColumnKind.Text, "Start as the clock on the wall showed it"),
        new("phase", ColumnKind.Text, "Phase"),
        new("site", ColumnKind.Text, "Site"),
        new("club", ColumnKind.Text, "Club"),
        new("ball", ColumnKind.Text, "Ball"),
        new("surface", ColumnKind.Text, "Surface"),
        new("cue", ColumnKind.Text, "Cue"),
        new("planned_swings", ColumnKind.Integer, "Swings planned"),
        new("variables", ColumnKind.Text, "Other session variables as JSON"),
        new("original_sha256", ColumnKind.Text, "Original"),
        new("original_row", ColumnKind.Integer, "Row in the original"),
    ], null);

    /// <summary>Its rows.</summary>
    public static RowSet Rows(IReadOnlyList<SessionRecord> sessions)
    {
        var rows = new RowSetBuilder(Definition);
        foreach (var session in sessions)
        {
            rows.Add(
                ("session", session.Id), ("participant", session.Participant.ToString()), ("started_at", session.StartedAt),
                ("started_local", LocalDateTimePattern.GeneralIso.Format(session.StartedLocal)), ("phase", session.Phase), ("site", session.Site),
                ("club", session.Club), ("ball", session.Ball), ("surface", session.Surface), ("cue", session.Cue), ("planned_swings", session.PlannedSwings),
                ("variables", session.Variables), ("original_sha256", session.Original?.ToString()), ("original_row", session.OriginalRow));
        }

        return rows.Build();
    }
}
