namespace SwingStudy.Domain.Protocols;

/// <summary>The code under which a blind analyst sees a phase or a contrast.</summary>
/// <param name="Kind"><see cref="Phase"/>, <see cref="Contrast"/> or <see cref="Cue"/>.</param>
/// <param name="Name">The name in the protocol.</param>
/// <param name="Code">The code.</param>
public sealed record MaskedName(string Kind, string Name, string Code)
{
    /// <summary>Kind of a phase.</summary>
    public const string Phase = "phase";

    /// <summary>Kind of a contrast.</summary>
    public const string Contrast = "contrast";

    /// <summary>Kind of a cue.</summary>
    public const string Cue = "cue";
}
