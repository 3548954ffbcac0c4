namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>The curve of one channel in one swing that counts, as it was processed.</summary>
/// <param name="Swing">The swing.</param>
/// <param name="Session">Its session.</param>
/// <param name="Phase">Its phase.</param>
/// <param name="Unit">UCUM unit of the samples; null without unit.</param>
/// <param name="SampleRateHz">Samples a second.</param>
/// <param name="FirstTimeS">Time of the first sample relative to impact, seconds.</param>
/// <param name="Samples">The samples; NaN where lost.</param>
/// <param name="Events">Events of the swing.</param>
internal sealed record SwingCurve(
    string Swing, string Session, string Phase, string? Unit, double SampleRateHz, double FirstTimeS, double[] Samples, SwingMoments Events)
{
    /// <summary>Time of the first and the last sample that is not lost; NaN where all are.</summary>
    public (double From, double To) Reach
    {
        get
        {
            var (first, last) = (Array.FindIndex(Samples, sample => !double.IsNaN(sample)), Array.FindLastIndex(Samples, sample => !double.IsNaN(sample)));
            return first < 0 ? (double.NaN, double.NaN) : (FirstTimeS + (first / SampleRateHz), FirstTimeS + (last / SampleRateHz));
        }
    }
}
