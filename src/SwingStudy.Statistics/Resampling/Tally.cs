namespace SwingStudy.Statistics.Resampling;

/// <summary>Counts values of a statistic that are at least as extreme as the observed one.</summary>
internal sealed class Tally(double observed, double slack)
{
    private long _compared;
    private long _greater;
    private long _less;
    private long _far;

    public void Add(double statistic)
    {
        _compared++;
        if (statistic >= observed - slack)
            _greater++;
        if (statistic <= observed + slack)
            _less++;
        if (Math.Abs(statistic) >= Math.Abs(observed) - slack)
            _far++;
    }

    public void Add(Tally other)
    {
        _compared += other._compared;
        _greater += other._greater;
        _less += other._less;
        _far += other._far;
    }

    /// <summary>An empty count against the same observed value.</summary>
    public Tally Fresh() => new(observed, slack);

    public RandomizationResult Result(string method, double assignments, bool exact) => new()
    {
        Method = method,
        Observed = observed,
        Assignments = assignments,
        Compared = _compared,
        IsExact = exact,
        CountGreater = _greater,
        CountLess = _less,
        CountTwoSided = _far,
    };
}
