namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>A stretch of a device's clock that one line describes, from one setting of the clock to the next.</summary>
/// <param name="Line">The line, anchored at the first record of the stretch.</param>
/// <param name="HasDrift">Whether a drift was fitted; else it is taken as zero.</param>
/// <param name="JitterSeconds">Residuals up to this are ordinary.</param>
/// <param name="Pairs">Records that were joined to reference readings, in order of time.</param>
/// <param name="FirstDevice">Position of the first record on the line.</param>
/// <param name="LastDevice">Position of the last record on the line.</param>
/// <param name="FirstReference">Position of the first reference reading on the line.</param>
/// <param name="LastReference">Position of the last reference reading on the line.</param>
/// <param name="RivalPairs">Pairs that the best other offset would make of the same records.</param>
/// <param name="RivalSeconds">How far that other offset lies from this one; null when no other makes a pair.</param>
/// <param name="Confidence">(v − w)/v, with v pairs and w of the best other offset, at least one: a single pair proves nothing, and evenly spaced swings
/// that fit one place further as well give a confidence near zero.</param>
internal sealed record ClockStretch(
    ClockLine Line,
    bool HasDrift,
    double JitterSeconds,
    IReadOnlyList<ClockPair> Pairs,
    int FirstDevice,
    int LastDevice,
    int FirstReference,
    int LastReference,
    int RivalPairs,
    double? RivalSeconds,
    double Confidence)
{
    /// <summary>Standard error of the drift; infinite where it is taken as zero.</summary>
    public double DriftError { get; init; } = double.PositiveInfinity;

    /// <summary>Root mean square of the ordinary residuals.</summary>
    public double ResidualRms
    {
        get
        {
            var ordinary = Pairs.Where(pair => !pair.IsLate).ToList();
            return ordinary.Count == 0 ? double.NaN : Math.Sqrt(ordinary.Average(pair => pair.ResidualSeconds * pair.ResidualSeconds));
        }
    }
}
