namespace SwingStudy.Reporting.Rows;

/// <summary>What a method word of the tables means, from the catalogue of statistics.</summary>
/// <param name="Word">The word.</param>
/// <param name="Title">What people call it.</param>
/// <param name="What">What it estimates, and how.</param>
/// <param name="Assumptions">What must hold.</param>
/// <param name="Sources">Full references.</param>
public sealed record MethodNote(string Word, string Title, string What, IReadOnlyList<string> Assumptions, IReadOnlyList<string> Sources);
