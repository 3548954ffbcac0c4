namespace SwingStudy.Storage.Tables;

/// <summary>Only rows whose value lies in a closed range; rows without the value never do.</summary>
/// <param name="Column">A number, integer or instant column.</param>
/// <param name="Low">Lower limit; for instants milliseconds since 1970 UTC.</param>
/// <param name="High">Upper limit, same unit.</param>
public sealed record RowRange(string Column, double Low, double High);
