namespace SwingStudy.Domain.Variables;

/// <summary>What one version of the dictionary changed.</summary>
/// <param name="Version">The version.</param>
/// <param name="Changes">What changed, one sentence each.</param>
public sealed record VersionNote(Version Version, IReadOnlyList<string> Changes);
