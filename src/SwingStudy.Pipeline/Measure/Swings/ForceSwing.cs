using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The ground's reactions in one swing, zeroed and filtered, with impact as time zero.</summary>
/// <remarks>Under both feet as far as all of them stood on plates; under one foot where it stood on a plate of its own.</remarks>
internal sealed class ForceSwing
{
    private const double LongestLossS = 0.02;
    private readonly SwingPlates _plates;
    private readonly Dictionary<string, PlatePose?> _poses;

    private ForceSwing(SwingPlates plates, Dictionary<string, PlatePose?> poses, IReadOnlyDictionary<string, PlateLoads> loads, double leastN)
    {
        (_plates, _poses) = (plates, poses);
        // Without a place in the laboratory forces hold, and what rests on places stays missing.
        var unknown = new PlatePose(Vector3D.Missing, double.NaN);
        Lead = Foot("lead");
        Trail = Foot("trail");
        Total = plates.Loss is null ? GroundReaction.Of([.. loads.Select(plate => (plate.Value, poses[plate.Key] ?? unknown))], leastN) : null;
        LeadShare = Lead is null || Total is null ? null : [.. Lead.ForceY.Zip(Total.ForceY, (part, whole) => whole >= GroundReaction.LeastForceN ? 100 * part / whole : double.NaN)];

        GroundReaction? Foot(string plate) => loads.TryGetValue(plate, out var own) ? GroundReaction.Of(own, poses[plate] ?? unknown, leastN) : null;
    }

    /// <summary>Names of the sources of its recordings.</summary>
    public string Source => _plates.Source;

    /// <summary>How plates of several recordings were joined; null when one holds all.</summary>
    public string? JoinMethod => _plates.JoinMethod;

    /// <summary>Where impact came from.</summary>
    public Impact Impact => _plates.Impact;

    /// <summary>Times of the samples.</summary>
    public TimeAxis Axis => _plates.Axis;

    /// <summary>Under the lead foot; null when it stood on no plate of its own that was recorded.</summary>
    public GroundReaction? Lead { get; }

    /// <summary>Under the trail foot.</summary>
    public GroundReaction? Trail { get; }

    /// <summary>Under both; null when a foot stood on no recorded plate.</summary>
    public GroundReaction? Total { get; }

    /// <summary>Share of the vertical force under the lead foot, per cent; null where the feet cannot be told apart.</summary>
    public double[]? LeadShare { get; }

    /// <summary>Body weight of the session, newtons; NaN when it is not known.</summary>
    public double BodyWeightN { get; private init; }

    /// <summary>Whether all plates were zeroed.</summary>
    public bool IsZeroed { get; private init; }

    /// <summary>Puts together the reactions of a swing.</summary>
    public static ForceSwing Of(SwingPlates plates, SessionForces session, SignalPlan plan)
    {
        var filter = new LowPass(plan.ForceCutoffHz);
        var loads = plates.Plates.ToDictionary(plate => plate.Plate, plate =>
        {
            var rate = plate.Axis.SampleRateHz;
            // Losses of a few samples are filled before filtering; longer ones stay missing and part the curve.
            var limit = (int)Math.Round(LongestLossS * rate);
            return plates.OnAxis(plate, session.Zeroed(plate.Recording, plate.Plate)!.Map(values => GapFill.Of(values, limit).Values).Filtered(filter, rate));
        });
        var least = GroundReaction.LeastForce(double.IsNaN(session.BodyWeightN) ? 0 : session.BodyWeightN);
        return new ForceSwing(plates, plates.Plates.ToDictionary(plate => plate.Plate, plate => session.PoseOf(plate.Recording, plate.Plate)), loads, least)
        {
            BodyWeightN = session.BodyWeightN,
            IsZeroed = plates.Plates.All(plate => session.ZeroOf(plate.Recording, plate.Plate) is not null),
        };
    }

    /// <summary>Middle of a plate's top along and across the target line; null when its place is not known or it was not recorded.</summary>
    public Vector3D? CentreOf(string plate) => _poses.GetValueOrDefault(plate)?.Centre;

    /// <summary>Middles of all plates; null when a place is not known.</summary>
    public IReadOnlyList<Vector3D>? Centres => _poses.Values.All(pose => pose is not null) ? [.. _poses.Values.Select(pose => pose!.Centre)] : null;

    /// <summary>Why there is no reaction under a foot, or under both; null when there is.</summary>
    /// <param name="plate">A name of <see cref="Channels.Plates"/>.</param>
    public string? LossOf(string plate) => plate switch
    {
        Channels.BothFeet => Total is null ? $"{_plates.Loss}: what both feet do cannot be told" : null,
        _ => (plate == "lead" ? Lead : Trail) is not null ? null
            : _plates.Plates.Any(other => other.Plate == Channels.BothFeet) ? $"both feet stood on one plate, which cannot tell the {plate} foot's part"
            : _plates.Loss ?? $"the {plate} plate was not recorded",
    };
}
