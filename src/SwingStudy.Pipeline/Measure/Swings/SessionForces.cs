using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>What holds for the plates over a session: their zeros, their places, and the player's weight.</summary>
internal sealed class SessionForces
{
    private readonly IReadOnlyList<PlatePlace> _places;
    private readonly int? _side;
    private readonly Dictionary<string, (PlateZero? Lead, PlateZero? Trail)> _zeros = new(StringComparer.Ordinal);

    /// <summary>Looks at the session's recordings.</summary>
    /// <param name="recordings">All recordings of the session, zeros and quiet standing included.</param>
    /// <param name="swings">Recordings of swings with the span in which the player stands still, from the first sample.</param>
    /// <param name="places">Declared places of plates.</param>
    /// <param name="side">+1 right-handed, −1 left-handed, for places declared by left and right; null when it is not known.</param>
    /// <param name="plan">How curves are processed.</param>
    public SessionForces(IEnumerable<Recording> recordings, IReadOnlyList<(Recording Recording, double StillToS)> swings, IReadOnlyList<PlatePlace> places, int? side, SignalPlan plan)
    {
        (_places, _side) = (places, side);
        var forces = recordings.Where(recording => recording.HasForces).OrderBy(recording => recording.FirstSampleMillis).ThenBy(recording => recording.Capture, StringComparer.Ordinal).ToList();
        // The first usable zero of a device holds for the session: a zero taken later may be of a plate that drifted or was stepped on.
        foreach (var empty in forces.Where(recording => recording.Purpose == "zero"))
        {
            if (PlateForces.Of(empty).Zeros is { Lead: not null, Trail: not null } zero)
                _zeros.TryAdd(empty.Device, zero);
        }

        (BodyWeightN, BodyWeightMethod) = Weight(forces, swings, plan);
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

    /// <summary>Zeros of the plates of a recording's device.</summary>
    public (PlateZero? Lead, PlateZero? Trail) ZeroOf(Recording recording) => _zeros.GetValueOrDefault(recording.Device);

    /// <summary>Where a plate lies: as the file says, else as the mapping declares; null when neither does.</summary>
    public PlatePose? PoseOf(Recording recording, string plate)
    {
        var bySide = _side switch { 1 => plate == "lead" ? "left" : "right", -1 => plate == "lead" ? "right" : "left", _ => null };
        var declared = _places.FirstOrDefault(place => place.Source == recording.Source && (place.Plate == plate || place.Plate == bySide));
        return PlateForces.OriginIn(recording, plate) is { } origin
            ? new PlatePose(origin, Math.Max(0, (declared?.CentreYM ?? 0) - origin.Y) + (declared?.MatM ?? 0))
            : declared?.ToPose();
    }

    private (double WeightN, string Method) Weight(List<Recording> forces, IReadOnlyList<(Recording Recording, double StillToS)> swings, SignalPlan plan)
    {
        var quiet = forces.Where(recording => recording.Purpose == "quiet").Select(recording => Still(recording, plan.QuietS, double.PositiveInfinity)).OfType<QuietStanding>().ToList();
        if (quiet.Count > 0)
            return (Median(quiet), string.Create(CultureInfo.InvariantCulture, $"quiet standing, stillest {plan.QuietS} s"));
        var before = swings.Where(swing => swing.Recording.HasForces).Select(swing => Still(swing.Recording, plan.QuietS, swing.StillToS)).OfType<QuietStanding>().ToList();
        return before.Count > 0
            ? (Median(before), string.Create(CultureInfo.InvariantCulture, $"no quiet standing recorded: stillness before the start, middle of {before.Count} swings"))
            : (double.NaN, "no quiet standing recorded and no stillness before a swing");
    }

    private QuietStanding? Still(Recording recording, double seconds, double toS)
    {
        var vertical = PlateForces.Of(recording).Less(ZeroOf(recording)).Vertical;
        var axis = new TimeAxis(recording.Channels.First(channel => channel.Key.EndsWith("_force_y", StringComparison.Ordinal)).Value.SampleRateHz, 0, vertical.Length);
        var until = Math.Min(toS, axis.LastTimeS);
        return QuietStanding.Stillest(vertical, axis, Math.Min(seconds, until), 0, until);
    }

    private static double Median(List<QuietStanding> standing)
    {
        double[] weights = [.. standing.Select(still => still.WeightN).Order()];
        var middle = weights.Length / 2;
        return weights.Length % 2 == 1 ? weights[middle] : (weights[middle - 1] + weights[middle]) / 2;
    }
}
