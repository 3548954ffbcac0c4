using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Ingestion.Intake;

/// <summary>A file that may be taken in.</summary>
/// <param name="Name">Relative to the inbox with forward slashes, or the file's name where a person named it: its name in messages and in the registry.</param>
/// <param name="Path">Where its bytes lie.</param>
/// <param name="Place">How it came.</param>
/// <param name="Size">Bytes.</param>
/// <param name="Held">Hash of a file that was held before and is tried again.</param>
internal sealed record Candidate(string Name, string Path, CandidatePlace Place, long Size, Sha256? Held = null);

/// <summary>How a file came.</summary>
internal enum CandidatePlace
{
    /// <summary>In the inbox, from which it is removed once it is safe.</summary>
    Inbox,

    /// <summary>Named by a person; it stays where it is.</summary>
    Named,

    /// <summary>Among the originals: it was held before.</summary>
    Originals,
}
