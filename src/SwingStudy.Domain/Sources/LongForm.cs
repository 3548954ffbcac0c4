namespace SwingStudy.Domain.Sources;

/// <summary>An export with one row a reading: rows that agree in participant, time and sequence form one record.</summary>
/// <param name="NameColumn">Column with the reading's name; <see cref="FieldSource.Column"/> of a value then means this name.</param>
/// <param name="ValueColumn">Column with its value.</param>
/// <param name="UnitColumn">Column with its unit, where there is one.</param>
public sealed record LongForm(string NameColumn, string ValueColumn, string? UnitColumn);
