using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Curves and events of captures that are in the study already, those of this run included, committed or waiting.</summary>
internal sealed class EarlierCurves(BatchTable curveTable, BatchTable eventTable)
{
    private readonly WrittenTogether _curves = new(curveTable);
    private readonly WrittenTogether _events = new(eventTable);

    /// <summary>Whether a capture has the curves and events of a recording.</summary>
    public bool AreSame(EarlierCapture capture, Recording recording)
    {
        var (curves, events) = (0, 0);
        foreach (var set in _curves.Of(capture.Original))
        {
            var (ids, channels, units, rates) = (set.Texts("capture_id"), set.Texts("channel"), set.Texts("unit"), set.Numbers("sample_rate_hz"));
            var values = ((NumberListColumn)set["values"]).Values;
            for (var row = 0; row < set.Count; row++)
            {
                if (ids[row] != capture.Id)
                    continue;
                var now = recording.Curves.FirstOrDefault(curve => curve.Channel == channels[row]);
                if (now is null || now.Unit != units[row] || !now.RateHz.Equals(rates[row]) || !now.Values.AsSpan().SequenceEqual(values[row] ?? []))
                    return false;
                curves++;
            }
        }

        foreach (var set in _events.Of(capture.Original))
        {
            var (ids, names, labels, times) = (set.Texts("capture_id"), set.Texts("event"), set.Texts("label"), set.Numbers("time_s"));
            for (var row = 0; row < set.Count; row++)
            {
                if (ids[row] != capture.Id)
                    continue;
                if (!recording.Events.Contains(new RecordedEvent(names[row]!, labels[row] ?? "", times[row])))
                    return false;
                events++;
            }
        }

        return curves == recording.Curves.Count && events == recording.Events.Count;
    }

    /// <summary>Rows of originals. A data file that holds rows of several is kept once it was read: their recordings come again together, as a rule.</summary>
    private sealed class WrittenTogether(BatchTable table)
    {
        private string? _path;
        private List<RowSet> _rows = [];

        public IEnumerable<RowSet> Of(string original) =>
            table.AllStanding.Where(file => file.OriginalHashes.Contains(original)).SelectMany(Read).Concat(table.WaitingOf(original));

        private IEnumerable<RowSet> Read(DataFile file)
        {
            if (file.Originals.Length == 0)
                return table.Table.ReadFiles([file]);
            if (_path != file.Path)
                (_path, _rows) = (file.Path, [.. table.Table.ReadFiles([file])]);
            return _rows;
        }
    }
}
