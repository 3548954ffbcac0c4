namespace SwingStudy.Domain.Problems;

/// <summary>Where in a file a problem is.</summary>
/// <param name="File">The file as the person named it, or its path inside the study.</param>
/// <param name="Row">The line (text) or row (workbook, array), counted from 1; null when the whole file is meant.</param>
/// <param name="Column">The heading, key or cell letter; null when the whole row is meant.</param>
public sealed record Place(string File, int? Row = null, string? Column = null)
{
    /// <summary>"plates.yaml:7", "export.csv:12, column 'Club speed'".</summary>
    public override string ToString()
    {
        var place = Row is { } row ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}:{row}") : File;
        return Column is null ? place : $"{place}, column '{Column}'";
    }
}
