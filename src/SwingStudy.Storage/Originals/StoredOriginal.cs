using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Originals;

/// <summary>A file whose bytes are safe.</summary>
/// <param name="Hash">Hash of the bytes, under which they are found.</param>
/// <param name="Size">Bytes.</param>
/// <param name="WasThere">The same bytes had been stored before.</param>
public sealed record StoredOriginal(Sha256 Hash, long Size, bool WasThere);
