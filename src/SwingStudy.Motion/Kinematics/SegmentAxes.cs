using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Kinematics;

/// <summary>Where a rigid segment points over time, from marks on it.</summary>
/// <remarks>
/// Its z axis runs along the line across the body (lead to trail for a right-handed player, so that x points forward when facing the ball); y is the
/// upward direction at right angles to it. Turns are told against address, so that the choice of axes on the segment drops out.
/// </remarks>
/// <param name="Poses">Axes at each sample; missing where a mark is.</param>
/// <param name="Axis">Times of the samples.</param>
public sealed record SegmentAxes(IReadOnlyList<Rotation3D> Poses, TimeAxis Axis)
{
    /// <summary>The pelvis: across from front lead to front trail, upward at right angles to the plane of the three marks.</summary>
    public static SegmentAxes Pelvis(Trajectory frontLead, Trajectory frontTrail, Trajectory back) => new(
        [.. Enumerable.Range(0, back.Count).Select(i =>
        {
            var across = frontTrail[i] - frontLead[i];
            var forward = (0.5 * (frontLead[i] + frontTrail[i])) - back[i];
            var normal = across.Cross(forward);
            return Rotation3D.From(across, normal.Y < 0 ? -normal : normal);
        })], back.Axis);

    /// <summary>The trunk: across from lead to trail shoulder, upward from the middle of the pelvis to the middle of the shoulders.</summary>
    public static SegmentAxes Trunk(Trajectory leadShoulder, Trajectory trailShoulder, Trajectory pelvisMiddle) => new(
        [.. Enumerable.Range(0, pelvisMiddle.Count).Select(i => Rotation3D.From(
            trailShoulder[i] - leadShoulder[i], (0.5 * (leadShoulder[i] + trailShoulder[i])) - pelvisMiddle[i]))], pelvisMiddle.Axis);

    /// <summary>Turn about the vertical against a span of time, degrees, right-handed about up: the axial turn of R(t) R(span)⁻¹ in the order Y-X-Z.</summary>
    /// <remarks>A turn in space; a line projected on the floor gives other values where the segment is bent (about 16 degrees were published).</remarks>
    /// <param name="fromS">Start of the span that counts as no turn, for instance address.</param>
    /// <param name="toS">Its end.</param>
    public double[] TurnSince(double fromS, double toS)
    {
        var zero = MeanPose(fromS, toS).Inverse;
        return Angles.Unwrapped([.. Poses.Select(pose => Angles.DegreesPerRadian * pose.After(zero).AxialTurn)]);
    }

    /// <summary>Angular velocity at each sample, radians per second: the vector of the skew matrix Ṙ Rᵀ by central differences; missing at the ends.</summary>
    /// <remarks>Source: Zatsiorsky (1998), Kinematics of Human Motion, ch. 3. Angles are never differenced.</remarks>
    public Trajectory AngularVelocity()
    {
        var result = Empty(Axis);
        for (var i = 1; i < Poses.Count - 1; i++)
        {
            var (before, here, after) = (Poses[i - 1], Poses[i], Poses[i + 1]);
            var half = Axis.SampleRateHz / 2;
            // Σ over the axes of a × ȧ / 2 is the vector of Ṙ Rᵀ for orthonormal axes.
            var turn = 0.5 * (here.X.Cross(half * (after.X - before.X)) + here.Y.Cross(half * (after.Y - before.Y)) + here.Z.Cross(half * (after.Z - before.Z)));
            (result.X[i], result.Y[i], result.Z[i]) = turn;
        }

        return result;
    }

    /// <summary>Angular velocity of a line, radians per second: u × u̇ of its direction u; a turn about the line itself is not seen.</summary>
    /// <param name="direction">From one end of the line to the other.</param>
    /// <param name="rate">The derivative of that.</param>
    public static Trajectory OfLine(Trajectory direction, Trajectory rate)
    {
        var result = Empty(direction.Axis);
        for (var i = 0; i < direction.Count; i++)
            (result.X[i], result.Y[i], result.Z[i]) = direction[i].Cross(rate[i]) / direction[i].Dot(direction[i]);
        return result;
    }

    private static Trajectory Empty(TimeAxis axis)
    {
        return new Trajectory(Missing(), Missing(), Missing(), axis);

        double[] Missing()
        {
            var values = new double[axis.Count];
            Array.Fill(values, double.NaN);
            return values;
        }
    }

    private Rotation3D MeanPose(double fromS, double toS)
    {
        Vector3D y = default, z = default;
        for (var i = Axis.From(fromS); i <= Axis.To(toS); i++)
        {
            if (!Poses[i].IsMissing)
                (y, z) = (y + Poses[i].Y, z + Poses[i].Z);
        }

        return Rotation3D.From(z, y);
    }
}
