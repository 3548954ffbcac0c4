using SwingStudy.Domain.Tables;

namespace SwingStudy.Domain.Variables;

/// <summary>Definition of one variable of the dictionary. Property names follow a Frictionless Table Schema field where that has them.</summary>
public sealed record Variable
{
    /// <summary>Snake-case name; also the column name in tables.</summary>
    public required string Name { get; init; }

    /// <summary>What a person calls it, in sentence case.</summary>
    public required string Title { get; init; }

    /// <summary>Meaning in one or two sentences.</summary>
    public required string Description { get; init; }

    /// <summary>Type of the values.</summary>
    public required VariableType Type { get; init; }

    /// <summary>Group the variable stands in: the name of its dictionary file, such as <c>club-and-ball</c>.</summary>
    public required string Group { get; init; }

    /// <summary>UCUM code of the canonical unit in which tables hold it; null for categories and texts.</summary>
    public string? Unit { get; init; }

    /// <summary>UCUM code of the unit shown to people; the canonical unit when not declared.</summary>
    public string? DisplayUnit { get; init; }

    /// <summary>Below this a value is physically impossible: nulled, flagged, raw text kept. Canonical unit.</summary>
    public double? Minimum { get; init; }

    /// <summary>Above this a value is physically impossible: nulled, flagged, raw text kept. Canonical unit.</summary>
    public double? Maximum { get; init; }

    /// <summary>What the possible range rests on: physics, a source, or "flag only".</summary>
    public string? PossibleBasis { get; init; }

    /// <summary>The closed list of words of a category; empty otherwise.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Outside this range a value is kept and flagged; null when no range is usual.</summary>
    public TypicalRange? Typical { get; init; }

    /// <summary>Which direction is an improvement.</summary>
    public Better Better { get; init; }

    /// <summary>The value to come near to, canonical unit; only with <see cref="Variables.Better.NearerTarget"/>.</summary>
    public double? Target { get; init; }

    /// <summary>Scale of measurement.</summary>
    public MeasurementScale Scale { get; init; } = MeasurementScale.Ratio;

    /// <summary>What one value describes.</summary>
    public VariableLevel Level { get; init; } = VariableLevel.Swing;

    /// <summary>Axis and sign in words: "+ toward the target".</summary>
    public string? Axis { get; init; }

    /// <summary>Formula from other variables or from curves, in words and symbols.</summary>
    public string? Formula { get; init; }

    /// <summary>The choice that changes the value: tracked point, denominator, event rule.</summary>
    public string? Definition { get; init; }

    /// <summary>Where the definition or the numbers come from.</summary>
    public string? Reference { get; init; }

    /// <summary>Plain words that headings of exports use for it.</summary>
    public IReadOnlyList<string> Synonyms { get; init; } = [];

    /// <summary>A value of exactly zero means that nothing was read (a speed of 0 of a struck ball), not a measured zero.</summary>
    public bool ZeroIsMissing { get; init; }

    /// <summary>Unit shown to people.</summary>
    public string? ShownUnit => DisplayUnit ?? Unit;

    /// <summary>The column that holds this variable.</summary>
    public ColumnDefinition Column => new(Name, Type switch
    {
        VariableType.Number => ColumnKind.Number,
        VariableType.Integer => ColumnKind.Integer,
        VariableType.Boolean => ColumnKind.Boolean,
        _ => ColumnKind.Text,
    }, Title, Unit);
}
