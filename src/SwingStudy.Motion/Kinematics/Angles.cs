using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Kinematics;

/// <summary>Angles between lines in space, in degrees.</summary>
public static class Angles
{
    /// <summary>Degrees of one radian.</summary>
    public const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>Included angle of two directions, 0 to 180: atan2(|a × b|, a · b), which stays exact where acos does not.</summary>
    public static double Included(Vector3D a, Vector3D b) => DegreesPerRadian * Math.Atan2(a.Cross(b).Length, a.Dot(b));

    /// <summary>Flexion of a joint between two long segments, 0 = straight: 180 less the included angle at the joint.</summary>
    /// <param name="proximal">End of the upper segment, for the knee the hip.</param>
    /// <param name="joint">The joint.</param>
    /// <param name="distal">End of the lower segment, for the knee the ankle.</param>
    public static double Flexion(Vector3D proximal, Vector3D joint, Vector3D distal) => 180 - Included(proximal - joint, distal - joint);

    /// <summary>Angle of forearm and shaft: the forearm from elbow to wrist, the shaft from grip to head; 180 = one straight line.</summary>
    /// <remarks>Measured where they meet, so that a straight line gives 180. Some sources give 180 less this angle, 0 for a straight line.</remarks>
    public static double ForearmShaft(Vector3D elbow, Vector3D wrist, Vector3D grip, Vector3D head) => Included(elbow - wrist, head - grip);

    /// <summary>Angles made continuous: jumps of more than half a turn are taken back.</summary>
    /// <param name="degrees">Angles in (−180, 180].</param>
    public static double[] Unwrapped(ReadOnlySpan<double> degrees)
    {
        var result = degrees.ToArray();
        var (turns, before) = (0.0, double.NaN);
        for (var i = 0; i < result.Length; i++)
        {
            if (double.IsNaN(degrees[i]))
                continue;
            if (degrees[i] - before > 180)
                turns -= 360;
            else if (degrees[i] - before < -180)
                turns += 360;
            before = degrees[i];
            result[i] = degrees[i] + turns;
        }

        return result;
    }
}
