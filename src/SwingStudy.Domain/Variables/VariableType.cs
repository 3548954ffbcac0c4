namespace SwingStudy.Domain.Variables;

/// <summary>Type of a variable's values.</summary>
public enum VariableType
{
    /// <summary>A measured number with a unit.</summary>
    Number,

    /// <summary>A count.</summary>
    Integer,

    /// <summary>Yes or no.</summary>
    Boolean,

    /// <summary>One of a closed list of words.</summary>
    Category,

    /// <summary>Free text or an identifier; leading zeros stay.</summary>
    Text,
}
