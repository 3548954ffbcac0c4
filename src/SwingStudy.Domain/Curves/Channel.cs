namespace SwingStudy.Domain.Curves;

/// <summary>A quantity that is recorded over time.</summary>
/// <param name="Name">Snake-case name, as in the <c>channel</c> column.</param>
/// <param name="Title">What a person calls it, with its sign.</param>
/// <param name="Unit">UCUM unit in which it is stored.</param>
public sealed record Channel(string Name, string Title, string Unit);
