namespace SwingStudy.App.Demo.Model;

/// <summary>A quantity that goes from one stated value to the next without a jump in speed or acceleration, and rests at both ends.</summary>
/// <param name="Stations">Times, seconds from top, and values; times rise.</param>
internal sealed record Course(IReadOnlyList<(double Time, double Value)> Stations)
{
    /// <summary>Value at a time.</summary>
    public double At(double time)
    {
        if (time <= Stations[0].Time)
            return Stations[0].Value;
        for (var i = 1; i < Stations.Count; i++)
        {
            var (to, value) = Stations[i];
            if (time >= to)
                continue;
            var (from, before) = Stations[i - 1];
            return before + ((value - before) * Step((time - from) / (to - from)));
        }

        return Stations[^1].Value;
    }

    /// <summary>The quintic from 0 to 1 whose first and second derivatives vanish at both ends.</summary>
    private static double Step(double x) => x * x * x * (10 + (x * ((6 * x) - 15)));
}
