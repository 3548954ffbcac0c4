using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Included angle of lead forearm and shaft, 180 = one straight line.</summary>
internal static class ForearmShaft
{
    /// <summary>Marks it takes.</summary>
    public static IReadOnlyList<string> Landmarks { get; } = ["lead_elbow", "lead_wrist", "grip", "club_head"];

    /// <summary>The angle at each sample before impact, degrees.</summary>
    public static double[] Curve(MarkerSwing motion)
    {
        var (elbow, wrist, grip, head) = Fits(motion);
        return [.. Enumerable.Range(0, motion.Axis.Count).Select(i => Angles.ForearmShaft(elbow.Place[i], wrist.Place[i], grip.Place[i], head.Place[i]))];
    }

    /// <summary>The angle at a time before impact.</summary>
    public static double At(MarkerSwing motion, double timeS) => Span.At(Curve(motion), motion.Axis, timeS);

    /// <summary>The angle at impact itself.</summary>
    public static double AtImpact(MarkerSwing motion)
    {
        var (elbow, wrist, grip, _) = Fits(motion);
        return Angles.ForearmShaft(elbow.AtImpact, wrist.AtImpact, grip.AtImpact, motion.HeadAtImpact.Place);
    }

    /// <summary>How fast the angle opens, degrees per second.</summary>
    public static double[] Rate(MarkerSwing motion) => Span.EachStretch(Curve(motion), 3, part => Difference.Central(part, motion.Axis.SampleRateHz));

    private static (MovingFit Elbow, MovingFit Wrist, MovingFit Grip, MovingFit Head) Fits(MarkerSwing motion) =>
        (motion.Fit("lead_elbow")!, motion.Fit("lead_wrist")!, motion.Fit("grip")!, motion.Fit("club_head")!);
}
