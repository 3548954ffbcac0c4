using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Makes a recording of the samples of a run.</summary>
/// <param name="request">The file.</param>
/// <param name="facts">What is made of its texts.</param>
/// <param name="texts">What holds for the whole file.</param>
/// <param name="remarks">Takes what should be known.</param>
internal sealed class RunFinish(RecordingRequest request, RecordingFacts facts, FixedTexts texts, List<Problem> remarks)
{
    private const int MostRemarks = 20;
    private readonly RecordingRule _rule = request.Mapping.Recording!;
    private readonly LaboratoryAxes _axes = new(request.Mapping.Recording!, request.Mapping.Plates);
    private readonly IReadOnlyList<NamedChannel> _channels = NamedChannel.Of(request.Mapping);

    /// <summary>The recording, or all that stands against the file.</summary>
    public Outcome<Recording> Of(SampleRun run)
    {
        var problems = new List<Problem>();
        var start = Value(facts.Start(run.Texts), problems);
        var trigger = Value(facts.Trigger(run.Texts), problems);
        var isRightHanded = Value(facts.IsRightHanded(run.Texts), problems);
        var grid = Grid(run, problems);
        if (grid is null || problems.Count > 0)
            return Outcome<Recording>.Failed(problems);
        var device = _channels.Select((channel, i) => new RecordedCurve(channel.Channel, channel.Unit, grid.RateHz, run.Values(i, grid))).ToList();
        if (device.TrueForAll(curve => Array.TrueForAll(curve.Values, double.IsNaN)))
            return RecordingMessages.NoValues(request.File, run.Row);
        NoteLosses(run, grid, device);
        var contact = double.IsNaN(run.CutContactSeconds) ? trigger : run.CutContactSeconds;
        var purpose = facts.Purpose(grid.Length / grid.RateHz);
        var isContact = purpose == RecordingPurpose.Swing && !double.IsNaN(contact);
        return new Recording
        {
            Row = run.Row,
            Sequence = facts.Sequence(run.Texts),
            Alias = facts.Alias(run.Texts),
            StartMillis = start + run.StartOffsetMillis,
            Purpose = purpose,
            ContactSeconds = isContact ? contact : null,
            Curves = _axes.Turned(device, isRightHanded),
            Events = isContact ? [new RecordedEvent(RecordingRule.TriggerEvent, TriggerLabel, contact)] : [],
            Lines = run.Count,
        };
    }

    private string TriggerLabel => _rule.Cut?.Column ?? (_rule.Trigger is { } place ? FixedTexts.PlaceName(place) : "");

    private static T? Value<T>(Outcome<T> outcome, List<Problem> problems)
        where T : notnull
    {
        problems.AddRange(outcome.Problems);
        return outcome.Value;
    }

    private SampleGrid? Grid(SampleRun run, List<Problem> problems)
    {
        var declared = double.NaN;
        if (_rule.Rate is { } field)
        {
            declared = facts.RateHz(texts) is > 0 and < double.PositiveInfinity and var rate ? rate : double.NaN;
            if (double.IsNaN(declared))
                problems.Add(RecordingMessages.RateMissing(request.Mapping, request.File, field));
        }

        if (problems.Count > 0)
            return null;
        var timed = run.TimedCount;
        if (timed > 0 && timed < run.Count)
        {
            problems.Add(RecordingMessages.ClockUnreadable(request.File, run.Lines[0]));
            return null;
        }

        GridFault? fault = null;
        var grid = timed == 0 ? SampleGrid.Even(declared, run.Count) : SampleGrid.Of(run.Clock, declared, out fault);
        if (fault is not null)
            problems.Add(RecordingMessages.Clock(request.File, run.Lines[fault.Sample], fault));
        else if (double.IsNaN(grid!.RateHz))
            problems.Add(RecordingMessages.RateUnknown(request.Mapping, request.File));
        return problems.Count > 0 ? null : grid;
    }

    private void NoteLosses(SampleRun run, SampleGrid grid, List<RecordedCurve> device)
    {
        if (remarks.Count >= MostRemarks)
            return;
        if (grid.Length > run.Count)
            remarks.Add(RecordingMessages.SamplesLost(request.File, run.Lines[0], grid.Length - run.Count, grid.Length));
        foreach (var curve in device.Where(curve => Array.TrueForAll(curve.Values, double.IsNaN)))
            remarks.Add(RecordingMessages.ChannelEmpty(request.File, run.Row, curve.Channel));
    }
}
