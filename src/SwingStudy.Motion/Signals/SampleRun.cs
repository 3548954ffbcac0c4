namespace SwingStudy.Motion.Signals;

/// <summary>Samples that follow each other.</summary>
/// <param name="From">Position of the first.</param>
/// <param name="Count">How many.</param>
public readonly record struct SampleRun(int From, int Count)
{
    /// <summary>Runs of at least a number of samples that satisfy a condition on the sample and its position.</summary>
    internal static IReadOnlyList<SampleRun> Where(ReadOnlySpan<double> samples, int least, Func<double, double, bool> condition)
    {
        var runs = new List<SampleRun>();
        var from = -1;
        for (var i = 0; i <= samples.Length; i++)
        {
            var holds = i < samples.Length && condition(samples[i], i > 0 ? samples[i - 1] : double.NaN);
            if (holds && from < 0)
                from = i;
            if (!holds && from >= 0)
            {
                if (i - from >= least)
                    runs.Add(new SampleRun(from, i - from));
                from = -1;
            }
        }

        return runs;
    }
}
