using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Planning;

/// <summary>Runs simulated studies side by side and sums up what they show; a study is a function of its stream alone.</summary>
internal static class StudySimulation
{
    public static PlannedPower Run(
        string method, int replications, Xoshiro256 chance, int threads, double? smallestP, Func<Xoshiro256, Func<StudyOutcome>> studies)
    {
        PowerClosedForm.RequireAtLeast(replications, 2, nameof(replications));
        var estimates = new double[replications];
        var widths = new double[replications];
        var significant = 0;
        ResampleBlocks.Run(replications, threads, chance, (start, end, stream) =>
        {
            var study = studies(stream);
            var hits = 0;
            for (var i = start; i < end; i++)
            {
                var outcome = study();
                estimates[i] = outcome.Estimate;
                widths[i] = outcome.HalfWidth;
                hits += outcome.IsSignificant ? 1 : 0;
            }

            Interlocked.Add(ref significant, hits);
        });
        var summary = Summary.Of(estimates);
        return new PlannedPower
        {
            Method = method,
            Power = (double)significant / replications,
            MeanEstimate = summary.Mean!.Value,
            StandardErrorOfEstimate = summary.StandardDeviation!.Value,
            MeanHalfWidth = Array.TrueForAll(widths, double.IsFinite) ? widths.Average() : null,
            SmallestPossibleP = smallestP,
            Replications = replications,
        };
    }
}
