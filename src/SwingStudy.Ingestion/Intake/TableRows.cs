using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What one file adds to one table.</summary>
/// <param name="Files">Data files of its own, where it has many rows.</param>
/// <param name="Waiting">Rows, each set of one player or of nobody, that wait to be written together with those of other files.</param>
internal sealed record TableRows(IReadOnlyList<DataFile> Files, IReadOnlyList<(string? Participant, RowSet Rows)> Waiting)
{
    /// <summary>Nothing.</summary>
    public static TableRows None { get; } = new([], []);

    /// <summary>Rows in all.</summary>
    public long Count => Files.Sum(file => file.Rows) + Waiting.Sum(set => (long)set.Rows.Count);
}
