using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>An original whose bytes are no longer there as they came, because a person of it was erased.</summary>
/// <param name="Hash">Hash of the bytes as they came; rows of others keep it as the name of their original.</param>
/// <param name="Stored">Hash of the bytes that are left, without the person's rows; null when nothing is left.</param>
/// <param name="Erasure">The erasure that did it last.</param>
public sealed record ErasedOriginal(Sha256 Hash, Sha256? Stored, string Erasure);
