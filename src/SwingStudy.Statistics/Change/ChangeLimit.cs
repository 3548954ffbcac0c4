namespace SwingStudy.Statistics.Change;

/// <summary>What most limits how small a change could be shown.</summary>
public enum ChangeLimit
{
    /// <summary>Day-to-day noise: more sessions would help most.</summary>
    Sessions,

    /// <summary>Swing-to-swing noise: more swings in each session would help most.</summary>
    Swings,

    /// <summary>Nobody knows how much sessions differ: a second session in each phase, or the study's pooled value, is needed first.</summary>
    UnknownSessionVariance,
}
