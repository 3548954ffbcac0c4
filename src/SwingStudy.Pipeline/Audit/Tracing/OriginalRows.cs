using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>Finds rows of originals again, through the mapping that read them; each original is read once.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
/// <param name="originals">Its originals.</param>
internal sealed class OriginalRows(StudySetup setup, StudyRegistry registry, OriginalStore originals)
{
    /// <summary>A tree whose origins have their raw text.</summary>
    public TraceNode Filled(TraceNode tree)
    {
        var wanted = Wanted(tree).Distinct().ToLookup(cell => cell.Original, cell => (cell.Row, cell.Variable), StringComparer.Ordinal);
        var found = new Dictionary<(string, int, string?), OriginalRow>();
        foreach (var original in wanted)
        {
            foreach (var (cell, row) in Read(original.Key, [.. original]))
                found[(original.Key, cell.Row, cell.Variable)] = row;
        }

        return Filled(tree, found);
    }

    private static IEnumerable<(string Original, int Row, string? Variable)> Wanted(TraceNode node)
    {
        var below = node.From.SelectMany(Wanted);
        return node.Origin is { } origin ? below.Prepend((origin.Original, origin.Row, node.Column)) : below;
    }

    private static TraceNode Filled(TraceNode node, Dictionary<(string, int, string?), OriginalRow> found) => node with
    {
        From = [.. node.From.Select(part => Filled(part, found))],
        Origin = node.Origin is { } origin ? found[(origin.Original, origin.Row, node.Column)] : null,
    };

    private Dictionary<(int Row, string? Variable), OriginalRow> Read(string original, IReadOnlyList<(int Row, string? Variable)> wanted)
    {
        var file = registry.IntakeFile(new Sha256(original));
        var mapping = setup.Mappings.FirstOrDefault(known => known.Source == file?.Source);
        var found = wanted.ToDictionary(cell => cell, cell => new OriginalRow(original, file?.InboxPath ?? "", cell.Row, "", null, null, "the row is no longer found in the original"));
        if (mapping is null || registry.StoredHash(new Sha256(original)) is not { } stored || !originals.Contains(stored))
            return Without(found, mapping is null ? "the mapping of its source is no longer among the study's sources" : "the original is no longer stored");
        if (mapping.Reader == ReaderKind.C3d)
            return Without(found, "a binary recording: its samples stand in table curves");
        if (!originals.Reach(stored).Succeeded(out var path, out var problems))
            return Without(found, problems[0].Code == OriginalMessages.LockedCode ? "the original is encrypted and the vault is locked: give its passphrase" : $"the original cannot be read: {problems[0].Found}");
        if (!RecordReaders.Open(path, mapping).Succeeded(out var document))
            return Without(found, "the original cannot be read through the present mapping of its source");
        using (document)
            Fill(found, document, mapping);
        return found;
    }

    private static void Fill(Dictionary<(int Row, string? Variable), OriginalRow> found, RecordDocument document, SourceMapping mapping)
    {
        var byRow = found.Keys.ToLookup(cell => cell.Row);
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var i = 0; i < block.RowCount; i++)
                {
                    foreach (var cell in byRow[block.Line(i)])
                    {
                        var heading = cell.Variable is { } variable && mapping.Values.TryGetValue(variable, out var field) && field.Column is { } column
                            ? document.Columns.Find(column)
                            : null;
                        found[cell] = found[cell] with
                        {
                            Raw = block.Raw(i).ToString(),
                            Heading = heading?.Name,
                            Cell = heading is null ? null : block.Cell(i, heading.Position).ToString(),
                            Absent = null,
                        };
                    }
                }
            }
        }
    }

    private static Dictionary<(int Row, string? Variable), OriginalRow> Without(Dictionary<(int Row, string? Variable), OriginalRow> rows, string why) =>
        rows.ToDictionary(row => row.Key, row => row.Value with { Absent = why });
}
