namespace SwingStudy.Statistics.Description;

/// <summary>A running sum whose rounding errors are carried along.</summary>
/// <remarks>Source: Neumaier A (1974), Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54:39–51.</remarks>
public struct CompensatedSum
{
    private double _sum;
    private double _lost;

    /// <summary>The sum so far.</summary>
    public readonly double Value => _sum + _lost;

    /// <summary>Adds one number.</summary>
    public void Add(double x)
    {
        var total = _sum + x;
        _lost += Math.Abs(_sum) >= Math.Abs(x) ? _sum - total + x : x - total + _sum;
        _sum = total;
    }
}
