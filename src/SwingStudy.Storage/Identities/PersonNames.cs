namespace SwingStudy.Storage.Identities;

/// <summary>Name and contact of a person; null where none was given, or while the vault is locked.</summary>
/// <param name="Name">The name.</param>
/// <param name="Contact">How to reach the person.</param>
public sealed record PersonNames(string? Name, string? Contact);
