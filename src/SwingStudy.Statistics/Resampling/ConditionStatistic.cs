namespace SwingStudy.Statistics.Resampling;

/// <summary>What a randomization test compares between the conditions; chosen before data are seen.</summary>
public enum ConditionStatistic
{
    /// <summary>Mean of B minus mean of A.</summary>
    MeanDifference,

    /// <summary>Median of B minus median of A.</summary>
    MedianDifference,
}
