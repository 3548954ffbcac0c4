namespace SwingStudy.Pipeline.Masking;

/// <summary>What a blind analyst sees of a column.</summary>
internal enum MaskRule
{
    /// <summary>It as it is.</summary>
    Plain,

    /// <summary>The code of a phase.</summary>
    PhaseCode,

    /// <summary>The code of a contrast.</summary>
    ContrastCode,

    /// <summary>The code of a cue.</summary>
    CueCode,

    /// <summary>An estimate without its sign, where the measure has the same size in both directions.</summary>
    Size,

    /// <summary>The lower limit of an estimate shown by its size.</summary>
    LowOfSize,

    /// <summary>The upper limit of an estimate shown by its size.</summary>
    HighOfSize,

    /// <summary>Nothing.</summary>
    Withheld,
}
