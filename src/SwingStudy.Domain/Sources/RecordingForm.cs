namespace SwingStudy.Domain.Sources;

/// <summary>How a file is divided into recordings.</summary>
public enum RecordingForm
{
    /// <summary>One recording a file.</summary>
    Single,

    /// <summary>Many recordings below each other; a column numbers them.</summary>
    Trials,

    /// <summary>Many recordings side by side: headings are a recording's number, a blank, and the name of a channel's column.</summary>
    Wide,

    /// <summary>One continuous recording that is cut around triggers.</summary>
    Stream,
}
