namespace SwingStudy.Motion.Signals;

/// <summary>How a signal is continued beyond its ends before it is filtered.</summary>
public enum Padding
{
    /// <summary>Mirrored through the end point: slopes go on.</summary>
    Odd,

    /// <summary>Mirrored at the end: the slope turns.</summary>
    Even,

    /// <summary>The end value goes on.</summary>
    Constant,

    /// <summary>Not continued.</summary>
    None,
}
