using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>One player's recordings of one file: rows that wait as long as they are few, data files once they are many.</summary>
internal sealed class PlayerFiles(IntakeTables tables, string? participant, string unit) : IDisposable
{
    private readonly List<(string Capture, double T0, RecordedCurve Curve)> _waiting = [];
    private readonly RowSetBuilder _events = new(tables.Events.Definition);
    private DataFileWriter? _curves;
    private long _values;

    /// <summary>Rows of the captures table.</summary>
    public RowSetBuilder Captures { get; } = new(tables.Captures.Definition);

    /// <summary>Adds curves and events of a capture.</summary>
    public void Add(string capture, Recording recording)
    {
        foreach (var curve in recording.Curves)
        {
            _waiting.Add((capture, recording.ContactSeconds is { } contact ? 0 - contact : double.NaN, curve));
            _values += curve.Values.Length;
        }

        foreach (var found in recording.Events)
            _events.Add(("capture_id", capture), ("participant", participant), ("event", found.Event), ("label", found.Label), ("time_s", found.TimeSeconds));
        if (_values >= DataGroups.MostValues)
            Flush();
    }

    /// <summary>Captures, curves and events of the player.</summary>
    public RecordingData Complete()
    {
        if (_curves is null && Captures.Count <= DataGroups.FewRows && _events.Count <= DataGroups.FewRows)
            return new RecordingData(Waits(Captures.Build()), Waits(CurveRows()), Waits(_events.Build()));
        Flush();
        return new RecordingData(Written(tables.Captures, Captures), new TableRows([_curves!.Complete()], []), Written(tables.Events, _events));
    }

    /// <inheritdoc/>
    public void Dispose() => _curves?.Dispose();

    private void Flush()
    {
        (_curves ??= tables.Curves.NewFile(participant, unit)).Append(CurveRows());
        _waiting.Clear();
        _values = 0;
    }

    private RowSet CurveRows()
    {
        var participants = new string?[_waiting.Count];
        Array.Fill(participants, participant);
        return new RowSet(tables.Curves.Definition,
        [
            new TextColumn([.. _waiting.Select(row => row.Capture)]), new TextColumn(participants), new TextColumn([.. _waiting.Select(row => row.Curve.Channel)]),
            new TextColumn([.. _waiting.Select(row => row.Curve.Unit)]), new NumberColumn([.. _waiting.Select(row => row.Curve.RateHz)]),
            new NumberColumn([.. _waiting.Select(row => row.T0)]), new NumberListColumn([.. _waiting.Select(row => row.Curve.Values)]),
        ]);
    }

    private TableRows Waits(RowSet rows) => new([], [(participant, rows)]);

    private TableRows Written(DeltaTable table, RowSetBuilder rows)
    {
        if (rows.Count == 0)
            return TableRows.None;
        using var writer = table.NewFile(participant, unit);
        writer.Append(rows.Build());
        return new TableRows([writer.Complete()], []);
    }
}
