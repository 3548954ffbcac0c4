using SwingStudy.Statistics.Results;

namespace SwingStudy.Calibrate;

/// <summary>How often something held, out of how often it could be judged.</summary>
internal struct Tally
{
    private int _held;
    private int _judged;

    /// <summary>Percent of the judged; null when nothing was.</summary>
    public readonly double? Percent => _judged > 0 ? 100.0 * _held / _judged : null;

    public void Covers(Estimate estimate, double truth)
    {
        if (estimate.Interval is not { } interval)
            return;
        _judged++;
        _held += interval.Contains(truth) ? 1 : 0;
    }
}
