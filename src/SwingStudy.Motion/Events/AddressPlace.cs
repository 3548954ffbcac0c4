using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Events;

/// <summary>Where the club head was set down before a swing.</summary>
/// <remarks>
/// Of all spans of <see cref="EventLimits.StillS"/> within the last second before the head leaves the ball's neighbourhood for good, the one between whose halves it
/// moves least, if that is slower than <see cref="EventLimits.StillMps"/>. Means of halves let no noise of single samples decide. Common practice, no source.
/// </remarks>
internal static class AddressPlace
{
    private const double LookedAtS = 1;
    private const double LeastBeforeS = 0.3;

    /// <summary>The place; missing when the head is nowhere still near the place of contact.</summary>
    /// <param name="head">The club head.</param>
    /// <param name="contactS">A moment near contact.</param>
    /// <param name="contact">Where the head was then.</param>
    /// <param name="limits">Thresholds.</param>
    public static Vector3D Of(Trajectory head, double contactS, Vector3D contact, EventLimits limits)
    {
        var axis = head.Axis;
        var half = Math.Max(1, (int)Math.Round(limits.StillS * axis.SampleRateHz / 2));
        var (best, least, until) = (Vector3D.Missing, limits.StillMps * half / axis.SampleRateHz, -1);
        for (var last = axis.To(contactS - LeastBeforeS); last >= Math.Max(2 * half, axis.From(contactS - limits.LongestSwingS)); last--)
        {
            if (until >= 0 && (until - last) / axis.SampleRateHz > LookedAtS)
                break;
            var (before, after) = (Mean(head, last - (2 * half), half), Mean(head, last - half, half));
            var moved = (after - before).Length;
            if (!(moved < limits.StillMps * half / axis.SampleRateHz) || !((after - contact).Length < limits.NearBallM))
                continue;
            until = until < 0 ? last : until;
            if (moved < least)
                (least, best) = (moved, 0.5 * (before + after));
        }

        return best;
    }

    private static Vector3D Mean(Trajectory head, int from, int count)
    {
        Vector3D sum = default;
        for (var i = from; i < from + count; i++)
            sum += head[i];
        return sum / count;
    }
}
