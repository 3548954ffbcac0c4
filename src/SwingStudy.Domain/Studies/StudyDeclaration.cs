namespace SwingStudy.Domain.Studies;

/// <summary>What <c>study.yaml</c> says.</summary>
public sealed record StudyDeclaration
{
    /// <summary>Name of the study.</summary>
    public required string Name { get; init; }

    /// <summary>IANA zone in which the study's days and reports are told.</summary>
    public required string Zone { get; init; }

    /// <summary>Folder with the dictionary, relative to the study folder.</summary>
    public string Dictionary { get; init; } = "data-dictionary";

    /// <summary>Licence under which exports may be used, as the address of its text or a sentence; null: none is granted.</summary>
    public string? License { get; init; }

    /// <summary>Sources in order of preference: the first that delivers a variable of a swing gives its value, and the first with swings gives the swings.</summary>
    public IReadOnlyList<string> PreferredSources { get; init; } = [];
}
