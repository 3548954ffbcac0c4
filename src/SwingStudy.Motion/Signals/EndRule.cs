namespace SwingStudy.Motion.Signals;

/// <summary>What a moving polynomial does where its window would reach beyond the signal.</summary>
public enum EndRule
{
    /// <summary>The polynomial of the first or last whole window gives the values: nothing beyond the signal is invented.</summary>
    LastWindow,

    /// <summary>The signal is mirrored at its end sample.</summary>
    Mirror,

    /// <summary>The end sample goes on.</summary>
    Nearest,
}
