using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Data files of one player's recordings.</summary>
internal sealed class PlayerFiles : IDisposable
{
    /// <summary>Values that wait at most before they are written as a row group: 8 MiB.</summary>
    private const long MostValues = 1 << 20;

    private readonly string? _participant;
    private readonly IntakeTables _tables;
    private readonly string _unit;
    private readonly DataFileWriter _curves;
    private readonly List<(string Capture, double T0, RecordedCurve Curve)> _waiting = [];
    private readonly RowSetBuilder _events;
    private long _values;

    public PlayerFiles(IntakeTables tables, string? participant, string unit)
    {
        (_tables, _participant, _unit) = (tables, participant, unit);
        Captures = new RowSetBuilder(tables.Captures.Definition);
        _events = new RowSetBuilder(tables.Events.Definition);
        _curves = tables.Curves.NewFile(participant, unit);
    }

    /// <summary>Rows of the captures table.</summary>
    public RowSetBuilder Captures { get; }

    /// <summary>Adds curves and events of a capture.</summary>
    public void Add(string capture, Recording recording)
    {
        foreach (var curve in recording.Curves)
        {
            _waiting.Add((capture, recording.ContactSeconds is { } contact ? 0 - contact : double.NaN, curve));
            _values += curve.Values.Length;
        }

        foreach (var found in recording.Events)
            _events.Add(("capture_id", capture), ("participant", _participant), ("event", found.Event), ("label", found.Label), ("time_s", found.TimeSeconds));
        if (_values >= MostValues)
            Flush();
    }

    /// <summary>Writes the curves that wait.</summary>
    public void Flush()
    {
        var (count, participants) = (_waiting.Count, new string?[_waiting.Count]);
        Array.Fill(participants, _participant);
        _curves.Append(new RowSet(_tables.Curves.Definition,
        [
            new TextColumn([.. _waiting.Select(row => row.Capture)]), new TextColumn(participants), new TextColumn([.. _waiting.Select(row => row.Curve.Channel)]),
            new TextColumn([.. _waiting.Select(row => row.Curve.Unit)]), new NumberColumn([.. _waiting.Select(row => row.Curve.RateHz)]),
            new NumberColumn([.. _waiting.Select(row => row.T0)]), new NumberListColumn([.. _waiting.Select(row => row.Curve.Values)]),
        ]));
        _waiting.Clear();
        _values = 0;
    }

    /// <summary>The file of captures.</summary>
    public DataFile CompleteCaptures() => Written(_tables.Captures, Captures);

    /// <summary>The file of curves.</summary>
    public DataFile CompleteCurves() => _curves.Complete();

    /// <summary>The file of events; null when there are none.</summary>
    public DataFile? CompleteEvents() => _events.Count == 0 ? null : Written(_tables.Events, _events);

    /// <inheritdoc/>
    public void Dispose() => _curves.Dispose();

    private DataFile Written(DeltaTable table, RowSetBuilder rows)
    {
        using var writer = table.NewFile(_participant, _unit);
        writer.Append(rows.Build());
        return writer.Complete();
    }
}
