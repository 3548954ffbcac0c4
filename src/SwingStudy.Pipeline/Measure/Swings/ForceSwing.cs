using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The ground's reactions in one swing, zeroed and filtered, with impact as time zero.</summary>
internal sealed class ForceSwing
{
    private ForceSwing(Recording recording, Impact impact, GroundReaction lead, GroundReaction trail, GroundReaction total)
    {
        (Recording, Impact, Lead, Trail, Total) = (recording, impact, lead, trail, total);
        Axis = new TimeAxis(recording.Channels.First(channel => channel.Key.EndsWith("_force_y", StringComparison.Ordinal)).Value.SampleRateHz, -impact.TimeS, total.Count);
        LeadShare = [.. lead.ForceY.Zip(total.ForceY, (part, whole) => whole >= GroundReaction.LeastForceN ? 100 * part / whole : double.NaN)];
    }

    /// <summary>The recording.</summary>
    public Recording Recording { get; }

    /// <summary>Where impact came from.</summary>
    public Impact Impact { get; }

    /// <summary>Times of the samples.</summary>
    public TimeAxis Axis { get; }

    /// <summary>Under the lead foot.</summary>
    public GroundReaction Lead { get; }

    /// <summary>Under the trail foot.</summary>
    public GroundReaction Trail { get; }

    /// <summary>Under both.</summary>
    public GroundReaction Total { get; }

    /// <summary>Share of the vertical force under the lead foot, per cent.</summary>
    public double[] LeadShare { get; }

    /// <summary>Body weight of the session, newtons; NaN when it is not known.</summary>
    public double BodyWeightN { get; private init; }

    /// <summary>Middle of each plate's top along and across the target line; null when the place is not declared.</summary>
    public (Vector3D Lead, Vector3D Trail)? PlateCentres { get; private init; }

    /// <summary>Whether both plates were zeroed.</summary>
    public bool IsZeroed { get; private init; }

    /// <summary>Puts together the reactions of one recording; null when it does not hold both plates.</summary>
    public static ForceSwing? Of(Recording recording, Impact impact, SessionForces session, SignalPlan plan)
    {
        var forces = PlateForces.Of(recording).Less(session.ZeroOf(recording));
        if (forces is not { Lead: { } lead, Trail: { } trail })
            return null;
        var filter = new LowPass(plan.ForceCutoffHz);
        var rate = recording.Channels.First(channel => channel.Key.EndsWith("_force_y", StringComparison.Ordinal)).Value.SampleRateHz;
        // Losses of a few samples are filled before filtering; longer ones stay missing and part the curve.
        var limit = (int)Math.Round(LongestLossS * rate);
        (lead, trail) = (lead.Map(Filled).Filtered(filter, rate), trail.Map(Filled).Filtered(filter, rate));
        var (leadPose, trailPose) = (session.PoseOf(recording, "lead"), session.PoseOf(recording, "trail"));
        var least = GroundReaction.LeastForce(double.IsNaN(session.BodyWeightN) ? 0 : session.BodyWeightN);
        // Without a place in the laboratory forces hold, and what rests on places stays missing.
        var unknown = new PlatePose(Vector3D.Missing, double.NaN);
        return new ForceSwing(
            recording, impact, GroundReaction.Of(lead, leadPose ?? unknown, least), GroundReaction.Of(trail, trailPose ?? unknown, least),
            GroundReaction.Of([(lead, leadPose ?? unknown), (trail, trailPose ?? unknown)], least))
        {
            BodyWeightN = session.BodyWeightN,
            PlateCentres = leadPose is null || trailPose is null ? null : (leadPose.Origin, trailPose.Origin),
            IsZeroed = session.ZeroOf(recording) is { Lead: not null, Trail: not null },
        };

        double[] Filled(double[] values) => GapFill.Of(values, limit).Values;
    }

    private const double LongestLossS = 0.02;
}
