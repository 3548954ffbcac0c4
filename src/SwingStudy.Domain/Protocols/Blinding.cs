namespace SwingStudy.Domain.Protocols;

/// <summary>Who is blind to what.</summary>
/// <param name="AnalystIsMasked">Whether phases are shown as codes, once the protocol is locked, until somebody unblinds.</param>
/// <param name="How">Who is blind to what, in words.</param>
public sealed record Blinding(bool AnalystIsMasked, string How)
{
    /// <summary>Word of a protocol whose analyst sees codes in place of phases.</summary>
    public const string Masked = "masked";

    /// <summary>Word of a protocol whose analyst sees phases.</summary>
    public const string Open = "open";
}
