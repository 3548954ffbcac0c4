namespace SwingStudy.Statistics.Distributions;

/// <summary>The integrals behind <see cref="NoncentralT"/>, over u = ln s for t &gt; 0.</summary>
internal readonly struct NoncentralTIntegral
{
    /// <summary>Terms below e^−40 of the largest are left out.</summary>
    private const double Cut = 40;

    private readonly double _t;
    private readonly double _ncp;
    private readonly double _half;
    private readonly double _constant;
    private readonly bool _rising;

    private NoncentralTIntegral(double t, double df, double ncp, bool rising)
    {
        (_t, _ncp, _half, _rising) = (t, ncp, df / 2, rising);
        _constant = Math.Log(2) + (0.5 * Math.Log(_half / (2 * Math.PI))) - Deviance.StirlingError(_half);
    }

    /// <summary>∫ Φ(t s − δ) f(s) ds, t &gt; 0: the lower tail.</summary>
    public static double Rising(double t, double df, double ncp) => new NoncentralTIntegral(t, df, ncp, rising: true).Value();

    /// <summary>∫ Φ(−(t s − δ)) f(s) ds, t &gt; 0: the upper tail.</summary>
    public static double Falling(double t, double df, double ncp) => new NoncentralTIntegral(t, df, ncp, rising: false).Value();

    private double Value()
    {
        if (IsStep)
            return AverageOverNormal();
        var (left, right, peak) = _rising ? PeakRightOfZero() : PeakLeftOfZero();
        var low = Edge(left, peak, -1);
        var high = Edge(right, peak, 1);
        var n = (int)Math.Clamp((high - low) / Step(high), 32, 100_000);
        var h = (high - low) / n;
        var sum = Sum(low, h, n + 1, peak);
        for (var round = 0; round < 8; round++)
        {
            var finer = sum + Sum(low + (h / 2), h, n, peak);
            var settled = Math.Abs((finer / 2) - sum) < 2e-14 * finer;
            (sum, h, n) = (finer, h / 2, 2 * n);
            if (settled)
                break;
        }

        return Math.Min(1, sum * h * Math.Exp(peak));
    }

    private double Sum(double from, double h, int count, double peak)
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            sum += Math.Exp(LogTerm(from + (i * h)) - peak);
        return sum;
    }

    /// <summary>ln of density of u times the normal tail.</summary>
    private double LogTerm(double u)
    {
        var z = (_t * Math.Exp(u)) - _ncp;
        return LogDensity(u) + (double.IsPositiveInfinity(z)
            ? (_rising ? 0 : double.NegativeInfinity)
            : Normal.LogUpperTail(_rising ? -z : z));
    }

    private double LogDensity(double u) => _constant - (_half * Deviance.ExponentialRemainder(u));

    /// <summary>A falling normal tail makes the term log-concave with its peak at u ≤ 0.</summary>
    private (double Left, double Right, double Peak) PeakLeftOfZero()
    {
        var low = -1.0;
        while (Slope(low) < 0 && low > -700)
            low *= 2;
        var high = 0.0;
        for (var i = 0; i < 30; i++)
        {
            var middle = (low + high) / 2;
            if (Slope(middle) > 0)
                low = middle;
            else
                high = middle;
        }

        return (low, low, LogTerm(low));
    }

    private double Slope(double u)
    {
        var s = Math.Exp(u);
        var z = (_t * s) - _ncp;
        var mills = Math.Exp((-z * z / 2) - 0.918938533204672741780329736406 - Normal.LogUpperTail(z));
        return (-2 * _half * (Math.Exp(2 * u) - 1)) - (_t * s * mills);
    }

    /// <summary>A rising normal tail may leave two peaks at u ≥ 0: all points that matter are found by a scan.</summary>
    private (double Left, double Right, double Peak) PeakRightOfZero()
    {
        var end = 0.0;
        while (_half * Deviance.ExponentialRemainder(end) < 745)
            end += 0.25 / Math.Sqrt(1 + _half);
        const int points = 129;
        Span<double> terms = stackalloc double[points];
        var peak = double.NegativeInfinity;
        for (var i = 0; i < points; i++)
            peak = Math.Max(peak, terms[i] = LogTerm(end * i / (points - 1)));
        int first = 0, last = points - 1;
        while (terms[first] < peak - Cut)
            first++;
        while (terms[last] < peak - Cut)
            last--;
        return (end * first / (points - 1), end * last / (points - 1), peak);
    }

    /// <summary>Where the terms have become negligible, going outward.</summary>
    private double Edge(double from, double peak, int direction)
    {
        var step = 0.5 / Math.Sqrt(1 + _half);
        var at = from;
        while (LogTerm(at) > peak - Cut && Math.Abs(at) < 5000)
        {
            at += direction * step;
            step *= 1.3;
        }

        return at;
    }

    /// <summary>Width of the density of u.</summary>
    private double DensityWidth => 1 / Math.Sqrt((2 * _half) + 1);

    /// <summary>Whether the normal factor jumps within a sliver of the density: then the other variable is the smooth one.</summary>
    private bool IsStep => _ncp > 10 && Math.Min(_t, _ncp) * DensityWidth > 20;

    /// <summary>P(s ≥ (Z + δ)/t) averaged over Z, for a lower tail; 1 minus it for an upper tail.</summary>
    private double AverageOverNormal()
    {
        const int points = 145;
        const double h = 18.0 / (points - 1);
        var sum = 0.0;
        for (var i = 0; i < points; i++)
        {
            var z = -9 + (i * h);
            var s = (z + _ncp) / _t;
            var (below, above) = IncompleteGamma.Tails(_half, _half * s * s);
            sum += Normal.Density(z) * (_rising ? above : below);
        }

        return Math.Min(1, sum * h);
    }

    /// <summary>Half of the narrowest width that the terms can have.</summary>
    private double Step(double high)
    {
        var density = DensityWidth;
        var transition = 1 / Math.Max(1, Math.Min(_t * Math.Exp(Math.Min(high, 1)), Math.Max(0, _ncp) + 9));
        return 0.6 * density * transition / Math.Sqrt((density * density) + (transition * transition));
    }
}
