namespace SwingStudy.Domain.Sources;

/// <summary>Where one value comes from, and how its text becomes a value of the dictionary. Exactly one of the places is set.</summary>
public sealed record FieldSource
{
    /// <summary>Heading of the column (ignoring case and surrounding blanks). The second column of the same heading is <c>heading#2</c>. For JSON a dotted path.</summary>
    public string? Column { get; init; }

    /// <summary>Regular expression with a group <c>value</c>, searched in the preamble lines.</summary>
    public string? Preamble { get; init; }

    /// <summary>Named group of <see cref="SourceMapping.Files"/>.</summary>
    public string? FileGroup { get; init; }

    /// <summary>Heading of a column of <see cref="SourceMapping.Index"/>, in the row that lists the file.</summary>
    public string? Index { get; init; }

    /// <summary>The same text for each row.</summary>
    public string? Constant { get; init; }

    /// <summary>UCUM code or customary name of the unit in the file; null: taken from the units row or from the heading's brackets.</summary>
    public string? Unit { get; init; }

    /// <summary>Multiplies the number before its unit is converted.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>Added after <see cref="Scale"/>, before its unit is converted.</summary>
    public double Offset { get; init; }

    /// <summary>Turns the sign, for a device whose positive direction is the dictionary's negative one.</summary>
    public bool Negate { get; init; }

    /// <summary>Turns the sign for players who swing left-handed: for a device that counts to the right (or clockwise) whoever swings, where the dictionary's plus
    /// means the same relative to the body.</summary>
    public bool Mirror { get; init; }

    /// <summary>Whether each cell names its own unit, as in <c>98.4 mph</c>; <see cref="Unit"/> is null then.</summary>
    public bool HasUnitInCells { get; init; }

    /// <summary>Texts before or behind a number that give its sign, such as <c>L</c> and <c>R</c>, ignoring case, and whether they turn it.</summary>
    public IReadOnlyDictionary<string, bool> Signs { get; init; } = new Dictionary<string, bool>();

    /// <summary>What <c>unit</c> says where each cell names its own.</summary>
    public const string UnitInCells = "in-cells";

    /// <summary>Decimal sign of this column where it differs from the file's; <c>null</c>: as the file.</summary>
    public char? Decimal { get; init; }

    /// <summary>Missing tokens of this column beside those of the mapping.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>Texts of the file and the words of the dictionary they stand for, ignoring case; others are kept as they are (text) or rejected (category).</summary>
    public IReadOnlyDictionary<string, string> Words { get; init; } = new Dictionary<string, string>();

    /// <summary>Line of the mapping file, for messages.</summary>
    public int Line { get; init; }
}
