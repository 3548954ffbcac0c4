namespace SwingStudy.Domain.Variables;

/// <summary>Which direction of change is an improvement.</summary>
public enum Better
{
    /// <summary>Neither direction is better in itself.</summary>
    None,

    /// <summary>More is better.</summary>
    Higher,

    /// <summary>Less is better.</summary>
    Lower,

    /// <summary>Nearer to <see cref="Variable.Target"/> is better.</summary>
    NearerTarget,
}
