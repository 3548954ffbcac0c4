using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Events;

/// <summary>Impact where no device has marked it.</summary>
public static class ImpactSearch
{
    /// <summary>From sound: the first sample of the loudest burst.</summary>
    /// <remarks>The burst begins where the size first exceeds a quarter of the loudest sample within 20 ms before it. Common practice, no source.</remarks>
    /// <param name="sound">The signal.</param>
    /// <param name="axis">Its times.</param>
    /// <returns>Impact; null when nothing stands ten times above the noise.</returns>
    public static SwingEvent? FromSound(ReadOnlySpan<double> sound, TimeAxis axis)
    {
        var (median, scale) = Spikes.Middle(sound);
        double[] sizes = [.. sound.ToArray().Select(x => Math.Abs(x - median))];
        if (Peak.Highest(sizes) is not { } loudest || loudest.Sample < 10 * scale || loudest.Sample == 0)
            return null;
        for (var i = Math.Max(0, loudest.Index - (int)(0.02 * axis.SampleRateHz)); ; i++)
        {
            if (sizes[i] >= loudest.Sample / 4)
                return new SwingEvent(EventNames.Impact, axis.TimeOf(i), "sound of contact", 0.9);
        }
    }

    /// <summary>From the club head alone: when it passes the place where it stood before the swing, on its fastest way through.</summary>
    /// <remarks>
    /// Of a practice swing this is the moment that stands for impact. The place is where the head stood still for longest near the way through. Where the
    /// head's speed collapses within 15 ms of that, the sample before the collapse is taken: a ball was hit. Common practice, no source.
    /// </remarks>
    /// <param name="head">The head, gaps of tolerable length filled.</param>
    /// <param name="limits">Thresholds.</param>
    /// <returns>Impact; null when the head is nowhere still, or does not pass that place.</returns>
    public static SwingEvent? FromHead(Trajectory head, EventLimits limits)
    {
        var axis = head.Axis;
        var path = head.Filtered(new LowPass(limits.SlowCutoffHz));
        var slow = path.Velocity().Lengths();
        if (Peak.Highest(slow) is not { } fastest || fastest.Sample < 10 * limits.MovingMps)
            return null;
        var still = SampleRun.Where([.. slow.Take(fastest.Index)], 2, (x, _) => x < limits.StillMps)
            .OrderByDescending(run => run.Count).FirstOrDefault(run => (path[run.From] - path[fastest.Index]).Length < 1);
        if (still.Count == 0)
            return null;
        var place = head.Mean(axis.TimeOf(still.From), axis.TimeOf(still.From + still.Count - 1));
        return Passage(head, place, fastest.Index) is not { } passage
            ? null
            : Collapse(head, passage) is { } before
                ? new SwingEvent(EventNames.Impact, axis.TimeOf(before), "club head before its speed collapses", 0.7)
                : new SwingEvent(EventNames.Impact, axis.TimeOf(passage), "club head passes its place at address", 0.5);
    }

    /// <summary>Position at which the head is level with a place along its own way, nearest to the fastest sample and to the place.</summary>
    private static double? Passage(Trajectory head, Vector3D place, int fastest)
    {
        var reach = (int)(0.1 * head.Axis.SampleRateHz);
        (double Position, double Distance)? best = null;
        for (var i = Math.Max(0, fastest - reach); i < Math.Min(head.Count - 1, fastest + reach); i++)
        {
            var way = head[i + 1] - head[i];
            var share = (place - head[i]).Dot(way) / way.Dot(way);
            if (!(share >= 0 && share < 1))
                continue;
            var distance = (head[i] + (share * way) - place).Length;
            if (best is null || distance < best.Value.Distance)
                best = (i + share, distance);
        }

        return best is { Distance: < 0.5 } found ? found.Position : null;
    }

    private static double? Collapse(Trajectory head, double passage)
    {
        var reach = Math.Max(3, (int)Math.Round(0.015 * head.Axis.SampleRateHz));
        var (from, to) = ((int)passage - (4 * reach), (int)passage + (2 * reach));
        if (from < 0 || to + 1 >= head.Count)
            return null;
        double[] steps = [.. Enumerable.Range(from, to - from + 1).Select(i => (head[i + 1] - head[i]).Length)];
        double[] changes = [.. Enumerable.Range(1, steps.Length - 1).Select(i => steps[i] - steps[i - 1])];
        if (changes.Any(double.IsNaN))
            return null;
        var (median, scale) = Spikes.Middle(changes);
        var drop = Peak.Lowest(changes, 3 * reach, steps.Length - 2)!.Value;
        // A drop counts when it is far outside the usual change and a real part of the speed: a ball takes more than a tenth of it.
        return drop.Sample < median - (8 * scale) && drop.Sample < -0.1 * steps[drop.Index] ? from + drop.Index + 0.5 : null;
    }
}
