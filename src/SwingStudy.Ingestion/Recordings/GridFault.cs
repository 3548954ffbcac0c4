namespace SwingStudy.Ingestion.Recordings;

/// <summary>Why the times of samples are no even grid.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Sample">Position of the sample at which it is.</param>
/// <param name="Found">What was found, in seconds or hertz.</param>
/// <param name="Expected">What was found before or expected.</param>
internal sealed record GridFault(GridFaultKind Kind, int Sample, double Found, double Expected);

/// <summary>Kinds of faults of a clock.</summary>
internal enum GridFaultKind
{
    /// <summary>A sample is not later than the one before.</summary>
    NotRising,

    /// <summary>The clock runs at another rate than the declared one.</summary>
    RateDiffers,

    /// <summary>Steps are no multiples of a period.</summary>
    Uneven,

    /// <summary>Gaps are far longer than what was recorded.</summary>
    TooSparse,
}
