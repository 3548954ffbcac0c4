namespace SwingStudy.Pipeline.Running;

/// <summary>All that a stage says about itself, once: help, provenance and the runner go by it.</summary>
public sealed record StageDeclaration
{
    /// <summary>Kebab-case name.</summary>
    public required string Name { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Title { get; init; }

    /// <summary>One sentence: what it does.</summary>
    public required string Summary { get; init; }

    /// <summary>Unit of work.</summary>
    public required UnitOfWork Unit { get; init; }

    /// <summary>Tables it reads.</summary>
    public required IReadOnlyList<TableSlice> Inputs { get; init; }

    /// <summary>Tables it writes; no other stage writes them.</summary>
    public required IReadOnlyList<string> Outputs { get; init; }

    /// <summary>Whether it sees the registry's record of the unit's session.</summary>
    public bool SeesSession { get; init; }

    /// <summary>Kinds of human decisions it sees.</summary>
    public IReadOnlyList<string> Decisions { get; init; } = [];

    /// <summary>Raised whenever the same input gives other output than before.</summary>
    public required string CodeVersion { get; init; }
}
