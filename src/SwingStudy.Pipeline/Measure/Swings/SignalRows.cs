using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Events;
using SwingStudy.Pipeline.Measure.Curves;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>What the signals of a session say, as rows.</summary>
internal static class SignalRows
{
    /// <summary>Events that plates alone tell.</summary>
    private static readonly string[] OfForces = [EventNames.Start, EventNames.Impact];

    /// <summary>Events of the swings.</summary>
    public static RowSet Events(TableDefinition table, string participant, SessionSignals session)
    {
        var rows = new RowSetBuilder(table);
        foreach (var swing in session.Swings)
        {
            foreach (var e in swing.Events.Found)
                rows.Add(("swing_id", swing.Swing), ("participant", participant), ("event", e.Name), ("time_s", e.TimeS), ("method", e.Method), ("confidence", Math.Round(e.Confidence, 3)));
        }

        return rows.Build();
    }

    /// <summary>Processed curves of the swings.</summary>
    public static RowSet Curves(TableDefinition table, string participant, SessionSignals session)
    {
        var rows = new RowSetBuilder(table);
        foreach (var swing in session.Swings)
            CurveRows.Add(rows, participant, swing);
        return rows.Build();
    }

    /// <summary>Values and reasons of all measures for which the session holds the kind of recording.</summary>
    public static RowSet Measures(TableDefinition table, string participant, SessionSignals session, IReadOnlyDictionary<string, string?> units)
    {
        var rows = new RowSetBuilder(table);
        foreach (var swing in session.Swings)
        {
            foreach (var measure in CurveMeasure.All.Where(measure => units.ContainsKey(measure.Name) && (measure.IsOfForces ? session.HasForces : session.HasMotion)))
            {
                var measured = measure.Of(swing);
                var method = measure.IsOfForces ? swing.Forces is null ? null : MeasureMethods.Forces(swing) : swing.Motion is null ? null : MeasureMethods.Motion(swing);
                Add(swing, measure.Name, measure.IsOfForces ? swing.Forces?.Source : swing.Motion?.Source, measured, $"{measure.Definition}{(method is null ? "" : "; " + method)}");
            }

            // Plates tell fewer events, by other rules: their times stand for a variable only where a session has no marks at all.
            var source = swing.Motion?.Source ?? (session.HasMotion ? null : swing.Forces?.Source);
            if (source is null)
                continue;
            foreach (var name in (swing.Motion is null ? OfForces : EventNames.All).Where(name => units.ContainsKey("t_" + name)))
            {
                var found = swing.Events.Found.FirstOrDefault(e => e.Name == name);
                var measured = found is null ? Measured.None(swing.Events.ReasonOf(name) ?? (swing.Motion is null ? "force and centre of pressure do not leave a stillness before the swing" : "it was not looked for")) : (Measured)found.TimeS;
                Add(swing, "t_" + name, source, measured, found?.Method);
            }
        }

        return rows.Build();

        void Add(SwingSignals swing, string variable, string? source, Measured measured, string? method) => rows.Add(
            ("swing_id", swing.Swing), ("participant", participant), ("variable", variable), ("source", source),
            ("value", double.IsNaN(measured.Value) ? null : measured.Value), ("text", measured.Text), ("unit", units[variable]), ("method", method), ("reason", measured.Reason));
    }
}
