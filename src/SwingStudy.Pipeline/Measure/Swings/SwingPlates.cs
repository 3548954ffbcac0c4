using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The plates of one swing: those of one recording, one plate under both feet, or plates of several recordings joined at contact.</summary>
/// <remarks>
/// Recordings that are joined have a clock and a rate of their own; contact, as each of them tells it, is the moment they share. All plates are read at
/// the times of the one with the highest rate. Plates of one recording keep their samples.
/// </remarks>
internal sealed class SwingPlates
{
    /// <summary>Between the names of sources whose recordings were joined.</summary>
    public const string Joint = " + ";

    private const string Lead = "lead";
    private const string Trail = "trail";

    private SwingPlates(IReadOnlyList<RecordedPlate> plates, string? loss)
    {
        (Plates, Loss) = (plates, loss);
        Recordings = [.. plates.Select(plate => plate.Recording).Distinct()];
        Source = string.Join(Joint, Recordings.Select(recording => recording.Source).Distinct());
        Axis = Common([.. plates.Select(plate => plate.Axis)]);
    }

    /// <summary>The plates: lead and trail, one of them, or the one under both feet.</summary>
    public IReadOnlyList<RecordedPlate> Plates { get; }

    /// <summary>The recordings that hold them.</summary>
    public IReadOnlyList<Recording> Recordings { get; }

    /// <summary>Names of their sources.</summary>
    public string Source { get; }

    /// <summary>Why the plates do not show both feet; null when they do.</summary>
    public string? Loss { get; }

    /// <summary>Times at which all plates are read, impact being zero.</summary>
    public TimeAxis Axis { get; }

    /// <summary>From when on all plates were recorded.</summary>
    public double SharedFromS => Plates.Max(plate => plate.Axis.FirstTimeS);

    /// <summary>Where impact came from: of joined recordings, the less certain one.</summary>
    public Impact Impact => Plates.Select(plate => plate.Impact).MinBy(impact => impact.Confidence)!;

    /// <summary>How recordings were joined, in words; null when one holds all.</summary>
    public string? JoinMethod => Recordings.Count < 2 ? null : string.Create(CultureInfo.InvariantCulture,
        $"plates of {string.Join(" and ", Plates.Select(plate => $"{plate.Recording.Source} ({plate.Axis.SampleRateHz:0.#} Hz)"))} joined at contact, read at {Axis.SampleRateHz:0.#} Hz by cubic splines");

    /// <summary>The plates of a swing; null when no recording of plates has a known impact.</summary>
    /// <param name="swing">The swing's recordings, in order of preference.</param>
    /// <param name="impactOf">Impact in each of them; null where nothing tells it.</param>
    public static SwingPlates? Of(IReadOnlyList<Recording> swing, Func<Recording, Impact?> impactOf)
    {
        List<Recording> forces = [.. swing.Where(recording => recording.HasForces)];
        List<(Recording Recording, Impact Impact)> timed = [.. forces.Select(recording => (recording, impactOf(recording))).Where(pair => pair.Item2 is not null).Select(pair => (pair.recording, pair.Item2!))];
        if (timed.Find(pair => pair.Recording.HasPlate(Lead) && pair.Recording.HasPlate(Trail)) is { Recording: not null } whole)
            return new SwingPlates([new(Lead, whole.Recording, whole.Impact), new(Trail, whole.Recording, whole.Impact)], null);
        if (timed.Find(pair => pair.Recording.HasPlate(Channels.BothFeet)) is { Recording: not null } both)
            return new SwingPlates([new(Channels.BothFeet, both.Recording, both.Impact)], null);
        List<RecordedPlate> parts = [.. new[] { Lead, Trail }
            .Select(plate => timed.Find(pair => pair.Recording.HasPlate(plate)) is { Recording: not null } found ? new RecordedPlate(plate, found.Recording, found.Impact) : null).OfType<RecordedPlate>()];
        return parts.Count switch
        {
            0 => null,
            1 => new SwingPlates(parts, forces.Exists(recording => recording.HasPlate(parts[0].Plate == Lead ? Trail : Lead))
                ? $"nothing tells impact in the recording of the {(parts[0].Plate == Lead ? Trail : Lead)} plate"
                : $"only the {parts[0].Plate} plate was recorded"),
            _ => new SwingPlates(parts, null),
        };
    }

    /// <summary>A plate's loads at the times of <see cref="Axis"/>.</summary>
    public PlateLoads OnAxis(RecordedPlate plate, PlateLoads loads) => plate.Axis == Axis ? loads : loads.Map(values => Resampling.At(values, plate.Axis, Axis));

    /// <summary>The times of the fastest axis, over all that any of them covers.</summary>
    private static TimeAxis Common(IReadOnlyList<TimeAxis> axes)
    {
        var fastest = axes.MaxBy(axis => axis.SampleRateHz);
        var before = Math.Max(0, (int)Math.Floor(fastest.PositionOf(fastest.FirstTimeS) - fastest.PositionOf(axes.Min(axis => axis.FirstTimeS))));
        var after = Math.Max(0, (int)Math.Floor(fastest.PositionOf(axes.Max(axis => axis.LastTimeS)) - (fastest.Count - 1)));
        return before + after == 0 ? fastest : new TimeAxis(fastest.SampleRateHz, fastest.TimeOf(-before), before + fastest.Count + after);
    }
}
