using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>The one recording of a C3D file.</summary>
internal sealed class C3dRecordings : IRecordingReader
{
    private static readonly LineCounts OneTaken = new(1, 1, 0, new Dictionary<string, long>());
    private readonly C3dFile _file;
    private readonly RecordingRequest _request;
    private readonly SourceMapping _mapping;
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _remarks = [];

    private C3dRecordings(C3dFile file, RecordingRequest request)
    {
        _file = file;
        _request = request;
        _mapping = request.Mapping;
        _remarks.AddRange(file.Notices);
        Preamble = C3dPreamble.Of(file.Parameters);
    }

    /// <inheritdoc/>
    public IReadOnlyList<PreambleLine> Preamble { get; }

    /// <inheritdoc/>
    public string? Encoding => null;

    /// <inheritdoc/>
    public char? Delimiter => null;

    /// <inheritdoc/>
    public char? Decimal => null;

    /// <inheritdoc/>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <inheritdoc/>
    public IReadOnlyList<Problem> Remarks => _remarks;

    /// <inheritdoc/>
    public IReadOnlyList<MappedReject> Rejects => [];

    /// <inheritdoc/>
    public LineCounts Counts { get; private set; } = LineCounts.None;

    /// <summary>The opened file.</summary>
    public C3dFile File => _file;

    /// <summary>Opens a file; the stream is closed with the reader, or at once when there is none.</summary>
    public static Outcome<C3dRecordings> Open(Stream stream, RecordingRequest request) => C3dFile.Open(stream, request.File).Succeeded(out var file, out var problems)
        ? new C3dRecordings(file, request)
        : Outcome<C3dRecordings>.Failed(problems);

    /// <inheritdoc/>
    public bool Fits() => new C3dChannels(_file, _mapping) is { Problems.Count: 0, Remarks: var remarks } && remarks.All(remark => remark.Code != "label-missing");

    /// <inheritdoc/>
    public IEnumerable<Recording> Read()
    {
        if (!One().Succeeded(out var recording, out var problems))
        {
            _problems.AddRange(problems);
            yield break;
        }

        Counts = OneTaken;
        yield return recording;
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    private Outcome<Recording> One()
    {
        var rule = _mapping.Recording!;
        var facts = new RecordingFacts(_request, '.', Preamble);
        var fixedTexts = new FixedTexts(Preamble, _request.NameMatch, _request.Index);
        var texts = RecordingTexts.Of(_mapping, fixedTexts.Of, null);
        var (start, trigger, hand) = (facts.Start(texts), facts.Trigger(texts), facts.IsRightHanded(texts));
        var channels = new C3dChannels(_file, _mapping);
        List<Problem> problems = [.. start.Problems, .. trigger.Problems, .. hand.Problems, .. channels.Problems];
        _remarks.AddRange(channels.Remarks);
        if (problems.Count > 0)
            return Outcome<Recording>.Failed(problems);
        if (channels.Values > ReaderLimits.RecordingValues)
            return RecordingMessages.TooLong(_request.File, 1, ReaderLimits.RecordingValues);
        var device = channels.Read();
        if (device.TrueForAll(curve => Array.TrueForAll(curve.Values, double.IsNaN)))
            return RecordingMessages.NoValues(_request.File, 1);
        foreach (var curve in device.Where(curve => Array.TrueForAll(curve.Values, double.IsNaN)))
            _remarks.Add(RecordingMessages.ChannelEmpty(_request.File, 1, curve.Channel));
        var purpose = facts.Purpose(_file.FrameCount / _file.RateHz);
        var events = Events(rule, purpose == RecordingPurpose.Swing ? trigger.Value : double.NaN);
        return new Recording
        {
            Row = 1,
            Sequence = facts.Sequence(texts),
            Alias = facts.Alias(texts),
            StartMillis = start.Value,
            Purpose = purpose,
            ContactSeconds = (events.Find(found => found.Event == RecordingRule.Impact) ?? events.Find(found => found.Event == RecordingRule.TriggerEvent))?.TimeSeconds,
            Curves = new LaboratoryAxes(rule, _mapping.Plates).Turned(device, hand.Value),
            Events = events,
            Lines = 1,
        };
    }

    /// <summary>Mapped events by time; of those that nobody mapped there is a remark.</summary>
    private List<RecordedEvent> Events(RecordingRule rule, double trigger)
    {
        var events = new List<RecordedEvent>();
        foreach (var found in _file.Events)
        {
            var name = rule.Events.FirstOrDefault(pair => pair.Value.Trim().Equals(found.Label, StringComparison.OrdinalIgnoreCase)).Key;
            if (name is not null)
                events.Add(new RecordedEvent(name, found.Label, found.TimeSeconds));
            else if (!_mapping.Ignore.Contains(found.Label, StringComparer.OrdinalIgnoreCase))
                _remarks.Add(RecordingMessages.LabelUnmapped(_mapping, _request.File, found.Label));
        }

        if (!double.IsNaN(trigger))
            events.Add(new RecordedEvent(RecordingRule.TriggerEvent, FixedTexts.PlaceName(rule.Trigger!), trigger));
        return [.. events.OrderBy(found => found.TimeSeconds)];
    }
}
