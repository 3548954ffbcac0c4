namespace SwingStudy.Motion.Signals;

/// <summary>Reading a sampled signal between its samples along straight lines.</summary>
public static class Straight
{
    /// <summary>Value at a position counted in samples; NaN outside the signal or beside a missing sample.</summary>
    public static double At(ReadOnlySpan<double> samples, double position)
    {
        if (!(position >= 0 && position <= samples.Length - 1))
            return double.NaN;
        var i = (int)position;
        var part = position - i;
        return part == 0 ? samples[i] : samples[i] + (part * (samples[i + 1] - samples[i]));
    }

    /// <summary>Value at a time between rising times; beyond the ends, the end values.</summary>
    public static double At(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double time)
    {
        if (time <= times[0])
            return values[0];
        if (time >= times[^1])
            return values[^1];
        var found = times.BinarySearch(time);
        if (found >= 0)
            return values[found];
        var i = ~found - 1;
        return values[i] + ((values[i + 1] - values[i]) * (time - times[i]) / (times[i + 1] - times[i]));
    }
}
