using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Curves and events of captures that are in the study already, those of this run included.</summary>
internal sealed class EarlierCurves(IntakeTables tables, IReadOnlySet<string> unfinished)
{
    private readonly List<DataFile> _curves = [.. tables.Curves.Files().Where(file => !unfinished.Contains(file.Unit))];
    private readonly List<DataFile> _events = [.. tables.Events.Files().Where(file => !unfinished.Contains(file.Unit))];

    /// <summary>Adds what a file of this run wrote.</summary>
    public void Add(RecordingData data)
    {
        _curves.AddRange(data.Curves);
        _events.AddRange(data.Events);
    }

    /// <summary>Whether a capture has the curves and events of a recording.</summary>
    public bool AreSame(EarlierCapture capture, Recording recording)
    {
        var (curves, events) = (0, 0);
        foreach (var set in tables.Curves.ReadFiles(_curves.Where(file => file.Unit == capture.Original)))
        {
            var (ids, channels, units, rates) = (set.Texts("capture_id"), set.Texts("channel"), set.Texts("unit"), set.Numbers("sample_rate_hz"));
            var values = ((Domain.Tables.NumberListColumn)set["values"]).Values;
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

        foreach (var set in tables.Events.ReadFiles(_events.Where(file => file.Unit == capture.Original)))
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
}
