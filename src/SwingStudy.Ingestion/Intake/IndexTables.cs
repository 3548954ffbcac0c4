using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds the table that lies beside a file of recordings: of this run, of earlier ones, or on disk beside a file that a person named.</summary>
internal sealed class IndexTables(StudyRegistry registry, OriginalStore originals)
{
    private readonly Dictionary<string, Sha256> _ofThisRun = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Outcome<IndexFile>> _read = new(StringComparer.Ordinal);
    private readonly Lazy<Dictionary<string, Sha256>> _earlier = new(() =>
        registry.IntakeFiles(IntakeStatus.Taken).GroupBy(file => file.InboxPath).ToDictionary(group => group.Key, group => group.Last().Hash, StringComparer.Ordinal));

    /// <summary>Remembers a table of this run.</summary>
    public void Remember(string name, Sha256 hash) => _ofThisRun[name] = hash;

    /// <summary>What the table says of a file; null when the mapping has no table.</summary>
    public IndexRow? RowOf(Candidate candidate, SourceMapping mapping, out Problem? problem)
    {
        problem = null;
        if (mapping.Index is not { } index)
            return null;
        if (!PathOf(candidate, index).Succeeded(out var path, out var unreached))
        {
            problem = unreached[0];
            return null;
        }

        if (!_read.TryGetValue(path, out var read))
            _read[path] = read = IndexFile.Read(File.OpenRead(path), Sibling(candidate.Name, index.File), mapping, index);
        if (!read.Succeeded(out var table, out var problems))
        {
            problem = problems[0];
            return null;
        }

        var row = table.RowOf(candidate.Name);
        problem = row is null ? RecordingMessages.IndexRowMissing(candidate.Name, index.File) : null;
        return row;
    }

    private Outcome<string> PathOf(Candidate candidate, IndexTable index)
    {
        // A file that a person named is known by its name alone: the table beside it on disk is meant, not one of that name from elsewhere.
        var beside = Path.Combine(Path.GetDirectoryName(candidate.Path) ?? "", index.File);
        if (candidate.Place == CandidatePlace.Named && File.Exists(beside))
            return beside;
        var name = Sibling(candidate.Name, index.File);
        return _ofThisRun.TryGetValue(name, out var hash) || _earlier.Value.TryGetValue(name, out hash) ? originals.Reach(registry.StoredHash(hash) ?? hash)
            : RecordingMessages.IndexMissing(candidate.Name, index.File);
    }

    private static string Sibling(string name, string file) => name.LastIndexOf('/') is var slash and >= 0 ? name[..(slash + 1)] + file : file;
}
