namespace SwingStudy.Motion.Signals;

/// <summary>Whether a declared cut-off means both passes of a zero-lag filter or each of them.</summary>
public enum PassCorrection
{
    /// <summary>The cut-off is where both passes together are at −3 dB.</summary>
    BothPasses,

    /// <summary>The cut-off is that of each pass: together they are at −6 dB there, as general filtering functions do it.</summary>
    EachPass,
}
