using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>What an erasure did. No pseudonym stands in it.</summary>
public sealed record ErasureReport
{
    /// <summary>Identifier of the erasure; empty when the person was erased before and only remains were looked for.</summary>
    public string Id { get; set; } = "";

    /// <summary>Originals without the person's rows now: hash as it came, and hash of what is stored.</summary>
    public List<(Sha256 Original, Sha256 Stored)> Cut { get; } = [];

    /// <summary>Originals of which nothing is left because they were the person's alone.</summary>
    public List<Sha256> Gone { get; } = [];

    /// <summary>Originals of which nothing is left although others stand in the tables from them: their format cannot be cut.</summary>
    public List<Sha256> GoneWithOthers { get; } = [];

    /// <summary>Table and the version from which its history begins now.</summary>
    public SortedDictionary<string, long> Tables { get; } = new(StringComparer.Ordinal);

    /// <summary>Releases that can no longer be reproduced.</summary>
    public List<string> Releases { get; } = [];

    /// <summary>Other files that were deleted or shortened, relative to the study.</summary>
    public List<string> Files { get; } = [];

    /// <summary>Files in which the person still stands and which a person has to mend, relative to the study.</summary>
    public List<string> Remaining { get; } = [];
}
