namespace SwingStudy.Pipeline.Link;

/// <summary>How well the records of a device tell the moment of impact, best first.</summary>
internal enum TimePrecision
{
    /// <summary>Contact was found in each recording: it comes at different times after the first sample.</summary>
    Measured,

    /// <summary>Times finer than a tenth of a second, such as those of a trigger.</summary>
    Fine,

    /// <summary>Times cut to whole seconds or the like, or the start of a recording for want of anything better.</summary>
    Coarse,
}
