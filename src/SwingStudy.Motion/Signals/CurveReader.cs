namespace SwingStudy.Motion.Signals;

/// <summary>A sampled curve read between its samples by a shape-preserving cubic; missing where it does not reach or samples are lost.</summary>
internal readonly struct CurveReader
{
    // An event that lies on the last sample may miss it by rounding.
    private const double Slack = 1e-6;
    private const int FewestSamples = 3;
    private readonly double[] _samples;
    private readonly double _sampleRateHz;
    private readonly double _firstTimeS;
    private readonly PiecewiseCubic? _curve;

    /// <summary>Takes a curve; missing samples are left out of the cubic.</summary>
    public CurveReader(ReadOnlySpan<double> samples, double sampleRateHz, double firstTimeS)
    {
        (_samples, _sampleRateHz, _firstTimeS) = (samples.ToArray(), sampleRateHz, firstTimeS);
        var (times, values) = (new List<double>(samples.Length), new List<double>(samples.Length));
        for (var i = 0; i < samples.Length; i++)
        {
            if (double.IsNaN(samples[i]))
                continue;
            times.Add(firstTimeS + (i / sampleRateHz));
            values.Add(samples[i]);
        }

        _curve = times.Count < FewestSamples ? null : PiecewiseCubic.ShapePreserving(times.ToArray(), values.ToArray());
    }

    /// <summary>Value at a time; NaN where the curve does not reach or either neighbouring sample is missing.</summary>
    public double At(double time)
    {
        var position = (time - _firstTimeS) * _sampleRateHz;
        if (_curve is null || position < -Slack || position > _samples.Length - 1 + Slack)
            return double.NaN;
        position = Math.Clamp(position, 0, _samples.Length - 1);
        return double.IsNaN(_samples[(int)Math.Floor(position)]) || double.IsNaN(_samples[(int)Math.Ceiling(position)]) ? double.NaN : _curve.At(time);
    }
}
