using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Times;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>What is known of a file of recordings before it is opened.</summary>
internal sealed record RecordingRequest
{
    /// <summary>The mapping; its recording rule is set.</summary>
    public required SourceMapping Mapping { get; init; }

    /// <summary>Name of the file in messages.</summary>
    public required string File { get; init; }

    /// <summary>Path of the file below the source's folder, for rules about names.</summary>
    public required string Name { get; init; }

    /// <summary>Match of the mapping's pattern on the name.</summary>
    public Match? NameMatch { get; init; }

    /// <summary>Row of the table beside the file, by heading; null when there is none.</summary>
    public IndexRow? Index { get; init; }

    /// <summary>A person's decision for local times that occur twice.</summary>
    public AmbiguousChoice? Times { get; init; }

    /// <summary>Whether a player, by name or code, swings right-handed; null when nobody knows.</summary>
    public Func<string, bool?> IsRightHanded { get; init; } = _ => null;
}
