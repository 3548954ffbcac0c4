using SwingStudy.Domain.Identifiers;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Writes the rows of one file as data files: one for each player, several at a time. Nothing counts before the commit.</summary>
internal sealed class CaptureFiles(IntakeContext study, IntakeTables tables)
{
    /// <summary>Rows of a row group: a session or two, so that readers can skip; and arrays so short that the collector frees them at once.</summary>
    private const int GroupRows = 8_192;

    /// <summary>Writes the captures that are new.</summary>
    public IReadOnlyList<DataFile> Write(MappedFile file, Sha256 original, IReadOnlyList<(ParticipantId Participant, Overlap Overlap)> players)
    {
        var hashes = file.Aliases.Select((alias, position) => (alias, position)).ToDictionary(pair => pair.position, pair => study.Identities.AliasHash(pair.alias));
        var rows = new CaptureRows(tables.Captures.Definition, original, file, hashes);
        var written = players.Where(player => player.Overlap.New.Count > 0).ToArray();
        var files = new DataFile[written.Length];
        Parallel.For(0, written.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, study.Threads) }, i =>
        {
            var (participant, overlap) = written[i];
            using var writer = tables.Captures.NewFile(participant.ToString(), original.ToString());
            var all = overlap.New.ToArray();
            var revisions = overlap.RevisionOf.Exists(id => id is not null) ? overlap.RevisionOf.ToArray() : null;
            for (var from = 0; from < all.Length; from += GroupRows)
            {
                var upTo = Math.Min(from + GroupRows, all.Length);
                var set = rows.Build(all.AsSpan(from, upTo - from), participant, revisions is null ? [] : revisions.AsSpan(from, upTo - from));
                writer.Append(set, () => rows.Release(set));
            }

            files[i] = writer.Complete();
        });
        return files;
    }

    /// <summary>Writes what could not be taken.</summary>
    public IReadOnlyList<DataFile> WriteRejects(IReadOnlyList<MappedReject> found, bool takesCaptures, Sha256 original, NameMask mask)
    {
        if (found.Count == 0)
            return [];
        using var writer = tables.Rejects.NewFile(null, original.ToString());
        writer.Append(RejectRows.Build(found, takesCaptures, original, mask));
        return [writer.Complete()];
    }
}
