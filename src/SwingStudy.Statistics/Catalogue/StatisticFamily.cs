namespace SwingStudy.Statistics.Catalogue;

/// <summary>The family a statistic is listed under in help, tables and documents.</summary>
public enum StatisticFamily
{
    /// <summary>Location and scatter of one sample.</summary>
    Description,

    /// <summary>How far two conditions lie apart.</summary>
    EffectSize,

    /// <summary>How repeatable a measurement is.</summary>
    Reliability,

    /// <summary>How well two sources of one variable agree.</summary>
    Agreement,

    /// <summary>One player's change against that player's own noise.</summary>
    Change,

    /// <summary>Several players together.</summary>
    Group,

    /// <summary>Non-overlap and trend in single-case designs.</summary>
    SingleCase,

    /// <summary>Tests that rest on how the conditions were assigned.</summary>
    Randomization,

    /// <summary>Intervals from resampled data.</summary>
    Bootstrap,

    /// <summary>Whole curves compared point by point.</summary>
    Curve,

    /// <summary>How many swings, sessions and players a study needs.</summary>
    Planning,
}
