namespace SwingStudy.Motion.Signals;

/// <summary>A curve on the time of the swing: 0 = start, 100 = top, 200 = impact.</summary>
/// <remarks>Piecewise, so that events of different swings lie on each other; 101 points a phase, the top being shared.</remarks>
public static class PhaseTime
{
    /// <summary>Points of one phase, both ends counted.</summary>
    public const int PointsAPhase = 101;

    /// <summary>Points from start to impact.</summary>
    public const int Points = (2 * PointsAPhase) - 1;

    /// <summary>The curve at <see cref="Points"/> moments, read from a shape-preserving cubic.</summary>
    /// <param name="samples">The curve; missing samples are left out of the cubic and give missing points where a whole stretch is missing.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="firstTimeS">Time of the first sample, on the clock of the events.</param>
    /// <param name="startS">Start of the swing.</param>
    /// <param name="topS">Top of the backswing.</param>
    /// <param name="impactS">Impact.</param>
    /// <returns>The points; NaN where the curve does not reach or is missing.</returns>
    /// <exception cref="ArgumentException">The events are not in order.</exception>
    public static double[] Normalise(ReadOnlySpan<double> samples, double sampleRateHz, double firstTimeS, double startS, double topS, double impactS)
    {
        if (!(startS < topS && topS < impactS))
            throw new ArgumentException("Start, top and impact must follow each other.", nameof(topS));
        var curve = new CurveReader(samples, sampleRateHz, firstTimeS);
        var points = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            var share = (double)i / (PointsAPhase - 1);
            points[i] = curve.At(share <= 1 ? startS + (share * (topS - startS)) : topS + ((share - 1) * (impactS - topS)));
        }

        return points;
    }
}
