namespace SwingStudy.Domain.Sources;

/// <summary>Where the rows lie in a sheet or text. What is null is proposed from the file and checked against the mapped headings.</summary>
public sealed record Layout
{
    /// <summary>Lines above the headings, kept as metadata; null: up to the first row that holds the mapped headings.</summary>
    public int? PreambleRows { get; init; }

    /// <summary>Heading rows, 0 to 2. With 2, empty cells of the upper row take the text to their left, and both are joined with a blank.</summary>
    public int HeadingRows { get; init; } = 1;

    /// <summary>Whether a row of units follows the headings; null: recognised by its content.</summary>
    public bool? UnitsRow { get; init; }

    /// <summary>Name of the worksheet; null: the only one.</summary>
    public string? Sheet { get; init; }

    /// <summary>Dotted path to the array of records in a JSON document; null: the document is the array.</summary>
    public string? Records { get; init; }
}
