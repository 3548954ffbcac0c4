using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Numbers, counts, and yes or no as 1 or 0.</summary>
internal abstract class NumericColumn(Variable variable, ColumnPlace place, MissingTokens missing) : ValueColumn(variable, place, missing)
{
    /// <summary>Whether values of left-handed players change their sign.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>Reads a trimmed cell; NaN unless the verdict is a value.</summary>
    public abstract CellVerdict Read(ReadOnlySpan<char> cell, CellKind kind, out double value);
}
