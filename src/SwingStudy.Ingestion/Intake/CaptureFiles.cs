using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Makes rows of the tables out of the rows of one file: many are written as data files, one for each player, several at a time; few wait for
/// those of other files. Nothing counts before the commit.</summary>
internal sealed class CaptureFiles(IntakeContext study, IntakeTables tables)
{
    /// <summary>The captures that are new.</summary>
    public TableRows Write(MappedFile file, Sha256 original, IReadOnlyList<(ParticipantId Participant, Overlap Overlap)> players)
    {
        var hashes = file.Aliases.Select((alias, position) => (alias, position)).ToDictionary(pair => pair.position, pair => study.Identities.AliasHash(pair.alias));
        var rows = new CaptureRows(tables.Captures.Definition, original, file, hashes);
        var written = players.Where(player => player.Overlap.New.Count > 0).ToArray();
        if (written.Sum(player => (long)player.Overlap.New.Count) <= DataGroups.FewRows)
            return new TableRows([], [.. written.Select(player => ((string?)player.Participant.ToString(), Few(rows, player.Participant, player.Overlap)))]);
        var files = new DataFile[written.Length];
        Parallel.For(0, written.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, study.Threads) }, i =>
        {
            var (participant, overlap) = written[i];
            using var writer = tables.Captures.NewFile(participant.ToString(), original.ToString());
            var all = overlap.New.ToArray();
            var revisions = Revisions(overlap);
            for (var from = 0; from < all.Length; from += DataGroups.Rows)
            {
                var upTo = Math.Min(from + DataGroups.Rows, all.Length);
                var set = rows.Build(all.AsSpan(from, upTo - from), participant, revisions.Length == 0 ? [] : revisions.AsSpan(from, upTo - from));
                writer.Append(set, () => rows.Release(set));
            }

            files[i] = writer.Complete();
        });
        return new TableRows(files, []);
    }

    /// <summary>What could not be taken.</summary>
    public TableRows WriteRejects(IReadOnlyList<MappedReject> found, bool takesCaptures, Sha256 original, NameMask mask)
    {
        var rows = RejectRows.Build(found, takesCaptures, original, mask);
        if (rows.Count <= DataGroups.FewRows)
            return new TableRows([], [(null, rows)]);
        using var writer = tables.Rejects.NewFile(null, original.ToString());
        writer.Append(rows);
        return new TableRows([writer.Complete()], []);
    }

    private static RowSet Few(CaptureRows rows, ParticipantId participant, Overlap overlap) =>
        rows.Build(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(overlap.New), participant, Revisions(overlap));

    private static string?[] Revisions(Overlap overlap) => overlap.RevisionOf.Exists(id => id is not null) ? [.. overlap.RevisionOf] : [];
}
