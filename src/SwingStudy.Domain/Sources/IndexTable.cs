namespace SwingStudy.Domain.Sources;

/// <summary>A delimited text that lies beside the files of a source and has a row for each of them.</summary>
/// <param name="File">Its name.</param>
/// <param name="NameColumn">Heading of the column with the names of the files.</param>
/// <param name="Text">Its format.</param>
public sealed record IndexTable(string File, string NameColumn, TextFormat Text);
