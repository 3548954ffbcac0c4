namespace SwingStudy.App.Studies;

/// <summary>What became of a line from one text to another.</summary>
internal enum LineChange
{
    /// <summary>It stands in both.</summary>
    Kept,

    /// <summary>It stands in the first alone.</summary>
    Removed,

    /// <summary>It stands in the second alone.</summary>
    Added,
}
