using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Audit;

/// <summary>Finds rows of originals again, through the mapping that read them.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
internal sealed class OriginalRows(StudySetup setup, StudyRegistry registry)
{
    private readonly OriginalStore _originals = new(setup.Folder);

    /// <summary>The row, with the cell that became <paramref name="variable"/> where the mapping reads it from a column.</summary>
    /// <returns>The row; its raw text is empty when the original or its mapping is no longer there.</returns>
    public OriginalRow Find(Sha256 original, int row, string? variable)
    {
        var file = registry.IntakeFile(original);
        var mapping = setup.Mappings.FirstOrDefault(known => known.Source == file?.Source);
        var found = new OriginalRow(original.ToString(), file?.InboxPath ?? "", row, "", null, null);
        if (mapping is null || registry.StoredHash(original) is not { } stored || !_originals.Contains(stored))
            return found;
        if (!RecordReaders.Open(_originals.PathOf(stored), mapping).Succeeded(out var document))
            return found;
        using (document)
        {
            var heading = variable is not null && mapping.Values.TryGetValue(variable, out var field) && field.Column is { } column ? document.Columns.Find(column) : null;
            foreach (var block in document.Blocks())
            {
                using (block)
                {
                    for (var i = 0; i < block.RowCount; i++)
                    {
                        if (block.Line(i) == row)
                            return found with { Raw = block.Raw(i).ToString(), Heading = heading?.Name, Cell = heading is null ? null : block.Cell(i, heading.Position).ToString() };
                    }
                }
            }
        }

        return found;
    }
}
