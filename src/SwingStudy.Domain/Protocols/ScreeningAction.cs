namespace SwingStudy.Domain.Protocols;

/// <summary>What a screening rule does to what it finds. Nothing is ever deleted.</summary>
public enum ScreeningAction
{
    /// <summary>Kept and counted, with a flag.</summary>
    Keep,

    /// <summary>The value does not count; the swing does.</summary>
    ExcludeValue,

    /// <summary>The swing does not count.</summary>
    ExcludeSwing,
}
