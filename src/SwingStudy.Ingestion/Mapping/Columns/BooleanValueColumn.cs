using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Yes or no.</summary>
internal sealed class BooleanValueColumn(Variable variable, ColumnPlace place, MissingTokens missing, WordList words) : NumericColumn(variable, place, missing)
{
    public override string Expected => "yes or no";

    public override CellVerdict Read(ReadOnlySpan<char> cell, CellKind kind, out double value)
    {
        value = double.NaN;
        if (Missing.Hold(cell))
            return CellVerdict.Missing;
        var text = words.TryGet(cell, out var word) ? word : cell;
        if (IsOne(text, "true", "yes", "y", "1", "x"))
            value = 1;
        else if (IsOne(text, "false", "no", "n", "0", "-"))
            value = 0;
        else
            return CellVerdict.Unparsable;
        return CellVerdict.Value;
    }

    private static bool IsOne(ReadOnlySpan<char> text, params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
                return true;
        }

        return false;
    }
}
