namespace SwingStudy.Fuzz;

/// <summary>A reader and small valid files of its kind.</summary>
/// <param name="Name">What is read.</param>
/// <param name="Weight">How often it is tried, against the others.</param>
/// <param name="Seeds">Valid files.</param>
/// <param name="Read">Reads a file to its end; throws when an account does not balance.</param>
internal sealed record Target(string Name, int Weight, IReadOnlyList<byte[]> Seeds, Action<byte[]> Read);
