namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the numbers of an outcome are, as far as words and rival explanations depend on it.</summary>
internal enum OutcomeKind
{
    /// <summary>A size: speed, angle, distance.</summary>
    Size,

    /// <summary>A force, moment or impulse, in newtons or body weights.</summary>
    Force,

    /// <summary>A moment relative to impact, negative before it: a fall says that it comes earlier.</summary>
    Moment,

    /// <summary>A time before impact, positive: a rise says that it comes earlier.</summary>
    MomentBefore,

    /// <summary>A duration.</summary>
    Duration,
}
