namespace SwingStudy.Domain.Sources;

/// <summary>What a recording is for; the words of the <c>purpose</c> column of captures.</summary>
public enum RecordingPurpose
{
    /// <summary>A swing.</summary>
    Swing,

    /// <summary>Empty plates: their readings are the plates' zero.</summary>
    Zero,

    /// <summary>The player stands still: body weight.</summary>
    Quiet,
}
