namespace SwingStudy.App.Demo;

/// <summary>A filled cell: a text or a number.</summary>
/// <param name="Column">Letter of its column.</param>
/// <param name="Text">The text; null for a number.</param>
/// <param name="Number">The number.</param>
/// <param name="Look">How it is shown.</param>
internal sealed record SpreadsheetCell(char Column, string? Text, double Number, CellLook Look);
