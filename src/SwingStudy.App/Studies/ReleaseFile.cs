using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Studies;

/// <summary>What <c>release.json</c> says: the frozen versions of a named release.</summary>
internal sealed record ReleaseFile
{
    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true };

    /// <summary>Name of the release.</summary>
    public required string Name { get; init; }

    /// <summary>When it was made, ISO 8601 UTC.</summary>
    public required string Created { get; init; }

    /// <summary>Version of each table.</summary>
    public required IReadOnlyDictionary<string, long> Tables { get; init; }

    /// <summary>Version of the dictionary.</summary>
    public required string Dictionary { get; init; }

    /// <summary>Hash of the dictionary.</summary>
    public required string DictionaryHash { get; init; }

    /// <summary>Hash of the protocol.</summary>
    public required string ProtocolHash { get; init; }

    /// <summary>Hash of the newest ledger entry: with it, entries cut off at the end of the ledger are found.</summary>
    public required string LedgerHash { get; init; }

    /// <summary>Reads a release of the study.</summary>
    public static Outcome<ReleaseFile> Read(StudyFolder study, string name)
    {
        var file = PathOf(study, name);
        if (!File.Exists(file))
        {
            return new Problem("release-unknown", new Place(name), "no release of that name", "a release of the study",
                Directory.Exists(study.Releases) && Directory.GetDirectories(study.Releases).Length > 0
                    ? $"Releases: {string.Join(", ", Directory.GetDirectories(study.Releases).Select(Path.GetFileName).Order(StringComparer.Ordinal))}."
                    : "There are none yet: 'swingstudy release NAME'.");
        }

        return JsonSerializer.Deserialize<ReleaseFile>(File.ReadAllText(file), Json) ?? throw new InvalidDataException($"{file} is empty.");
    }

    /// <summary>Writes the release; a release is never overwritten.</summary>
    public void Write(StudyFolder study)
    {
        var file = PathOf(study, Name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        using var stream = new FileStream(file, FileMode.CreateNew);
        JsonSerializer.Serialize(stream, this, Json);
    }

    /// <summary>Path of a release's file.</summary>
    public static string PathOf(StudyFolder study, string name) => Path.Combine(study.Releases, name, "release.json");
}
