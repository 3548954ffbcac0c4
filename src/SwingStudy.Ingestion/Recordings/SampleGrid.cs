namespace SwingStudy.Ingestion.Recordings;

/// <summary>Where the samples of a recording lie on an even grid of time: lost lines leave gaps.</summary>
/// <param name="RateHz">Samples a second.</param>
/// <param name="Length">Samples of the grid, lost ones included.</param>
/// <param name="Places">Place of each sample on the grid; null when none was lost.</param>
internal sealed record SampleGrid(double RateHz, int Length, int[]? Places)
{
    /// <summary>A step longer than this many periods leaves a gap.</summary>
    private const double GapPeriods = 1.6;

    /// <summary>More samples off the grid than this share, and the clock is not even.</summary>
    private const double UnevenShare = 0.02;

    /// <summary>How far the clock's own rate may lie from a declared one.</summary>
    private const double RateTolerance = 0.02;

    /// <summary>Longest grid that a recording may have for each of its samples.</summary>
    private const int MostPlacesPerSample = 16;

    /// <summary>The grid of evenly spaced samples without a clock.</summary>
    public static SampleGrid Even(double rateHz, int samples) => new(rateHz, samples, null);

    /// <summary>The grid that the times of the samples tell.</summary>
    /// <param name="seconds">Times, at least one.</param>
    /// <param name="declaredRateHz">A rate that is declared, or NaN.</param>
    /// <param name="fault">Why there is none.</param>
    public static SampleGrid? Of(ReadOnlySpan<double> seconds, double declaredRateHz, out GridFault? fault)
    {
        fault = null;
        if (seconds.Length == 1)
            return new SampleGrid(declaredRateHz, 1, null);
        var steps = new double[seconds.Length - 1];
        for (var i = 0; i < steps.Length; i++)
        {
            steps[i] = seconds[i + 1] - seconds[i];
            if (!(steps[i] > 0) && !(steps[i] == 0 && declaredRateHz > 0))
            {
                fault = new GridFault(GridFaultKind.NotRising, i + 1, seconds[i], seconds[i + 1]);
                return null;
            }
        }

        // Only an undeclared rate needs the median, and sorting costs more than all the rest.
        var ordered = declaredRateHz > 0 ? steps : [.. steps.Order()];
        var period = declaredRateHz > 0 ? 1 / declaredRateHz : ordered[(ordered.Length - 1) / 2];
        var (mean, count) = MeanUpTo(ordered, GapPeriods * period);
        if (declaredRateHz > 0)
        {
            if (count == 0 || !(Math.Abs((mean / period) - 1) <= Math.Max(RateTolerance, 1.0 / count)))
            {
                fault = new GridFault(GridFaultKind.RateDiffers, 0, 1 / (count == 0 ? steps.Min() : mean), declaredRateHz);
                return null;
            }
        }
        else
        {
            period = mean;
        }

        return Placed(steps, period, declaredRateHz > 0 ? declaredRateHz : RoundedRate(period), out fault);
    }

    private static SampleGrid? Placed(double[] steps, double period, double rateHz, out GridFault? fault)
    {
        fault = null;
        var places = new int[steps.Length + 1];
        long place = 0;
        var uneven = 0;
        var (firstUneven, isGapless) = (-1, true);
        for (var i = 0; i < steps.Length; i++)
        {
            var periods = steps[i] <= GapPeriods * period ? 1 : Math.Round(steps[i] / period);
            if (Math.Abs(steps[i] - (periods * period)) > 0.75 * period)
            {
                uneven++;
                firstUneven = firstUneven < 0 ? i + 1 : firstUneven;
            }

            isGapless &= periods == 1;
            place += (long)Math.Min(periods, int.MaxValue);
            if (place >= (long)places.Length * MostPlacesPerSample)
            {
                fault = new GridFault(GridFaultKind.TooSparse, i + 1, steps[i], period);
                return null;
            }

            places[i + 1] = (int)place;
        }

        if (uneven > UnevenShare * steps.Length)
        {
            fault = new GridFault(GridFaultKind.Uneven, firstUneven, steps[firstUneven - 1], period);
            return null;
        }

        return new SampleGrid(rateHz, places[^1] + 1, isGapless ? null : places);
    }

    /// <summary>Mean of the steps that are no gaps: the median finds those, the mean is not fooled by a clock of coarse steps.</summary>
    private static (double Mean, int Count) MeanUpTo(double[] steps, double limit)
    {
        var (sum, count) = (0.0, 0);
        foreach (var step in steps)
        {
            if (step > limit)
                continue;
            sum += step;
            count++;
        }

        return (sum / count, count);
    }

    /// <summary>Rates are whole numbers but for the last digits that decimal times leave.</summary>
    private static double RoundedRate(double period) => Math.Abs((Math.Round(1 / period) * period) - 1) < 1e-4 ? Math.Round(1 / period) : 1 / period;
}
