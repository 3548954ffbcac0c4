namespace SwingStudy.Statistics.Resampling;

/// <summary>A statistic of chosen rows of a table, computed again and again in resampling. Not for use by two threads at once.</summary>
public abstract class RowStatistic
{
    /// <summary>Number of rows of the table.</summary>
    public abstract int Rows { get; }

    /// <summary>The statistic of the rows named, each as often as named.</summary>
    /// <param name="rows">0-based rows.</param>
    /// <returns>The statistic; NaN where those rows do not support it, which resampling counts and leaves out.</returns>
    public abstract double Of(ReadOnlySpan<int> rows);

    /// <summary>A copy for another thread.</summary>
    public abstract RowStatistic Copy();
}
