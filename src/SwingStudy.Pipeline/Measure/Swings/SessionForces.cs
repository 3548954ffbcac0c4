using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>What holds for the plates over a session: their zeros, their places, and the player's weight.</summary>
internal sealed class SessionForces
{
    private readonly IReadOnlyList<PlatePlace> _places;
    private readonly int? _side;
    private readonly Dictionary<(string Device, string Plate), PlateZero> _zeros = [];

    /// <summary>Looks at the session's recordings.</summary>
    /// <param name="recordings">All recordings of the session, zeros and quiet standing included.</param>
    /// <param name="swings">The plates of swings with the time until which the player stands still, from impact.</param>
    /// <param name="clocks">Clocks of plates that record apart from each other.</param>
    /// <param name="places">Declared places of plates.</param>
    /// <param name="side">+1 right-handed, −1 left-handed, for places declared by left and right; null when it is not known.</param>
    /// <param name="plan">How curves are processed.</param>
    public SessionForces(
        IEnumerable<Recording> recordings, IReadOnlyList<(SwingPlates Plates, double StillToS)> swings, PlateClocks clocks, IReadOnlyList<PlatePlace> places, int? side, SignalPlan plan)
    {
        (_places, _side) = (places, side);
        var forces = recordings.Where(recording => recording.HasForces).OrderBy(recording => recording.FirstSampleMillis).ThenBy(recording => recording.Capture, StringComparer.Ordinal).ToList();
        // The first usable zero of a plate holds for the session: a zero taken later may be of a plate that drifted or was stepped on.
        foreach (var empty in forces.Where(recording => recording.Purpose == "zero"))
        {
            foreach (var plate in Channels.Plates)
            {
                if (PlateForces.Of(empty, plate) is { } loads && PlateZero.Of(loads) is { } zero)
                    _zeros.TryAdd((empty.Device, plate), zero);
            }
        }

        (BodyWeightN, BodyWeightMethod) = Weight([.. forces.Where(recording => recording.Purpose == "quiet")], swings, clocks, plan);
        if (!double.IsNaN(BodyWeightN) && BodyWeightN is < LeastWeightN or > MostWeightN)
        {
            WeightProblem = BodyWeightN < 0
                ? FormattableString.Invariant($"the standing force is {BodyWeightN:0} N: forces seem to be those on the plate, not on the player")
                : FormattableString.Invariant($"the standing force is {BodyWeightN:0} N, which is no body weight: axes, unit or zero may be wrong");
            BodyWeightN = double.NaN;
        }
    }

    private const double LeastWeightN = 150;
    private const double MostWeightN = 2500;

    /// <summary>Body weight, newtons; NaN when it is not known.</summary>
    public double BodyWeightN { get; }

    /// <summary>How it was found.</summary>
    public string BodyWeightMethod { get; }

    /// <summary>What speaks against the forces as they are declared; null when nothing does.</summary>
    public string? WeightProblem { get; }

    /// <summary>Zero of a plate of a recording's device; null when none was recorded.</summary>
    public PlateZero? ZeroOf(Recording recording, string plate) => _zeros.GetValueOrDefault((recording.Device, plate));

    /// <summary>Loads of a plate less its zero, where that is known; null when the recording does not hold the plate.</summary>
    public PlateLoads? Zeroed(Recording recording, string plate) => PlateForces.Of(recording, plate) is { } loads
        ? ZeroOf(recording, plate) is { } zero ? loads.Less(zero) : loads
        : null;

    /// <summary>Where a plate lies: as the file says, else as the mapping declares; null when neither does.</summary>
    public PlatePose? PoseOf(Recording recording, string plate)
    {
        var bySide = _side switch { 1 => plate == "lead" ? "left" : "right", -1 => plate == "lead" ? "right" : "left", _ => null };
        var declared = _places.FirstOrDefault(place => place.Source == recording.Source && (place.Plate == plate || (plate != Channels.BothFeet && place.Plate == bySide)));
        return PlateForces.OriginIn(recording, plate) is { } origin
            ? declared?.About(origin) ?? new PlatePose(origin, 0)
            : declared?.ToPose();
    }

    private (double WeightN, string Method) Weight(List<Recording> quiet, IReadOnlyList<(SwingPlates Plates, double StillToS)> swings, PlateClocks clocks, SignalPlan plan)
    {
        var standing = quiet.Select(recording => Whole(recording) is { } vertical ? Still(vertical, plan.QuietS, 0, double.PositiveInfinity) : null)
            .Concat(quiet.Where(recording => recording.HasPlate("lead") && !recording.HasPlate("trail")).Select(lead => Apart(lead, quiet, clocks, plan.QuietS))).OfType<QuietStanding>().ToList();
        if (standing.Count > 0)
            return (Median(standing), string.Create(CultureInfo.InvariantCulture, $"quiet standing, stillest {plan.QuietS} s"));
        var before = swings.Where(swing => swing.Plates.Loss is null).Select(swing => Still(Vertical(swing.Plates), plan.QuietS, swing.Plates.SharedFromS, swing.StillToS)).OfType<QuietStanding>().ToList();
        return before.Count > 0
            ? (Median(before), string.Create(CultureInfo.InvariantCulture, $"no quiet standing recorded: stillness before the start, middle of {before.Count} swings"))
            : (double.NaN, swings.Count > 0 && swings.All(swing => swing.Plates.Loss is not null)
                ? $"{swings[0].Plates.Loss}: body weight needs both feet on plates"
                : "no quiet standing recorded and no stillness before a swing");
    }

    /// <summary>Summed vertical force of a recording that holds all the player stands on; null when it does not.</summary>
    private (double[] Values, TimeAxis Axis)? Whole(Recording recording)
    {
        if (Zeroed(recording, "lead") is { } lead && Zeroed(recording, "trail") is { } trail)
            return ([.. lead.ForceY.Zip(trail.ForceY, (a, b) => a + b)], recording.ForceAxis("lead", 0));
        return Zeroed(recording, Channels.BothFeet) is { } both ? (both.ForceY, recording.ForceAxis(Channels.BothFeet, 0)) : null;
    }

    /// <summary>Standing that the two plates recorded apart, put together by what swings tell of their clocks.</summary>
    private QuietStanding? Apart(Recording lead, List<Recording> quiet, PlateClocks clocks, double seconds)
    {
        foreach (var trail in quiet.Where(recording => recording.HasPlate("trail")))
        {
            // How late the trail plate's first sample is, on the clock of the lead plate.
            var later = (trail.FirstSampleMillis - clocks.ToTrail(lead.Device, trail.Device, lead.FirstSampleMillis)) / 1000;
            if (double.IsNaN(later))
                continue;
            var axis = lead.ForceAxis("lead", 0);
            var other = Resampling.At(Zeroed(trail, "trail")!.ForceY, trail.ForceAxis("trail", -later), axis);
            var (from, to) = (Math.Max(0, later), Math.Min(axis.LastTimeS, trail.ForceAxis("trail", -later).LastTimeS));
            if (to - from >= seconds && QuietStanding.Stillest([.. Zeroed(lead, "lead")!.ForceY.Zip(other, (a, b) => a + b)], axis, seconds, from, to) is { } still)
                return still;
        }

        return null;
    }

    private (double[] Values, TimeAxis Axis) Vertical(SwingPlates plates)
    {
        var each = plates.Plates.Select(plate => plates.OnAxis(plate, Zeroed(plate.Recording, plate.Plate)!).ForceY).ToList();
        return ([.. Enumerable.Range(0, plates.Axis.Count).Select(i => each.Sum(values => values[i]))], plates.Axis);
    }

    private static QuietStanding? Still((double[] Values, TimeAxis Axis) vertical, double seconds, double fromS, double toS)
    {
        var until = Math.Min(toS, vertical.Axis.LastTimeS);
        return QuietStanding.Stillest(vertical.Values, vertical.Axis, Math.Min(seconds, until - fromS), fromS, until);
    }

    private static double Median(List<QuietStanding> standing)
    {
        double[] weights = [.. standing.Select(still => still.WeightN).Order()];
        var middle = weights.Length / 2;
        return weights.Length % 2 == 1 ? weights[middle] : (weights[middle - 1] + weights[middle]) / 2;
    }
}
