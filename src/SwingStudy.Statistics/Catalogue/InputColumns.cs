namespace SwingStudy.Statistics.Catalogue;

/// <summary>The columns of a tidy table that a statistic needs. One row of the table is one observation.</summary>
[Flags]
public enum InputColumns
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The observed number.</summary>
    Value = 1,

    /// <summary>The condition of the observation: phase, source, rater. Two conditions unless the statistic says otherwise.</summary>
    Condition = 2,

    /// <summary>Whom the observation is of.</summary>
    Subject = 4,

    /// <summary>The session, within subject.</summary>
    Session = 8,

    /// <summary>Time or another predictor.</summary>
    Predictor = 16,

    /// <summary>The sampling variance of the value.</summary>
    Variance = 32,
}
