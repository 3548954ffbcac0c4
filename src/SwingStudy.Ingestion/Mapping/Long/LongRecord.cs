using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Long;

/// <summary>Readings that agree in player, time and number.</summary>
/// <param name="Line">Line of the first reading.</param>
/// <param name="Keys">Cells of the columns that all readings share.</param>
internal sealed record LongRecord(int Line, IReadOnlyList<LongCell> Keys)
{
    /// <summary>Readings by name.</summary>
    public Dictionary<string, LongReadingCell> Readings { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a reading marks a practice swing.</summary>
    public bool IsPractice { get; set; }
}

/// <summary>One reading.</summary>
/// <param name="Cell">Its value.</param>
/// <param name="Line">Its line.</param>
/// <param name="Raw">Its row as it stands in the file.</param>
internal readonly record struct LongReadingCell(LongCell Cell, int Line, string Raw);

/// <summary>A cell taken out of its block.</summary>
internal readonly record struct LongCell(string Text, CellKind Kind, double Number)
{
    public static LongCell Empty { get; } = new("", CellKind.Empty, double.NaN);
}
