using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Free text, identifiers and words of a closed list.</summary>
internal sealed class TextValueColumn(Variable variable, ColumnPlace place, MissingTokens missing, WordList words) : ValueColumn(variable, place, missing)
{
    private readonly bool _closed = variable.Type == VariableType.Category;
    private readonly WordList _own = new(variable.Words.ToDictionary(word => word, word => word, StringComparer.Ordinal));

    public override string Expected => _closed ? $"one of: {string.Join(", ", Variable.Words)}" : "a text";

    /// <summary>Reads a trimmed cell; null unless the verdict is a value.</summary>
    public CellVerdict Read(ReadOnlySpan<char> cell, TextPool pool, out string? value)
    {
        value = null;
        if (Missing.Hold(cell))
            return CellVerdict.Missing;
        if (words.TryGet(cell, out value) || (_closed && _own.TryGet(cell, out value)))
            return CellVerdict.Value;
        if (_closed)
            return CellVerdict.UnknownWord;
        value = pool.Get(cell);
        return CellVerdict.Value;
    }
}
