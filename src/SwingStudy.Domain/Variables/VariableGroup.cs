namespace SwingStudy.Domain.Variables;

/// <summary>Variables that measure one part of the matter, kept in one dictionary file.</summary>
/// <param name="Name">Kebab-case name: the file's name without ending.</param>
/// <param name="Title">What a person calls it.</param>
/// <param name="Description">What belongs to it, and the conventions that all its variables share.</param>
public sealed record VariableGroup(string Name, string Title, string Description);
