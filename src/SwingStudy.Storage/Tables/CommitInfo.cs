using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Tables;

/// <summary>Why a table version exists; stands in the table's log.</summary>
public sealed record CommitInfo
{
    /// <summary>The stage or act that wrote: <c>intake</c>, <c>link</c>, <c>measure</c>.</summary>
    public required string Stage { get; init; }

    /// <summary>Version of the code of that stage.</summary>
    public string? CodeVersion { get; init; }

    /// <summary>The run it belongs to.</summary>
    public string? RunId { get; init; }

    /// <summary>Version of the dictionary under which the values were written.</summary>
    public Version? DictionaryVersion { get; init; }

    /// <summary>Hash of that dictionary.</summary>
    public Sha256? DictionaryHash { get; init; }

    /// <summary>Versions of the tables that were read.</summary>
    public IReadOnlyDictionary<string, long> Inputs { get; init; } = new Dictionary<string, long>();
}
