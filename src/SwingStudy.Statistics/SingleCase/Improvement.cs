namespace SwingStudy.Statistics.SingleCase;

/// <summary>Which way of a variable counts as better.</summary>
public enum Improvement
{
    /// <summary>Larger values are better.</summary>
    Increase,

    /// <summary>Smaller values are better: every value is taken with its sign turned before phases are compared.</summary>
    Decrease,
}
