using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Reads the numbers of cells whose notation is not known yet: with or without signs between thousands, with or without a unit behind them.</summary>
/// <param name="decimalSign">Decimal sign of the file.</param>
internal sealed class CellNumbers(char decimalSign)
{
    private readonly NumberText _plain = new(decimalSign, null);
    private readonly (char Sign, NumberText Numbers)[] _grouped =
        [.. ((char[])[decimalSign == '.' ? ',' : '.', ' ', '\'']).Select(sign => (sign, new NumberText(decimalSign, sign)))];

    /// <summary>Reads a trimmed cell and notes in its column what else stands in it.</summary>
    public bool TryRead(ReadOnlySpan<char> text, ColumnProfile column, out double number)
    {
        if (TryNumber(text, column, out number))
            return true;
        if (NumberAndRest.NumberOf(text) is not { IsEmpty: false } digits || !TryNumber(digits, column, out number))
            return false;
        NumberAndRest.Part(text, out _, out var rest);
        var unit = NumberAndRest.WithoutLetter(rest);
        var letter = unit.Length < rest.Length ? rest[^1..] : rest.Length == 1 && rest[0] is 'L' or 'R' or 'l' or 'r' ? rest : [];
        if (!letter.IsEmpty)
            column.CellLetters.Add(letter.ToString());
        if (!letter.SequenceEqual(rest))
            column.CellUnits[unit.ToString()] = column.CellUnits.GetValueOrDefault(unit.ToString()) + 1;
        return true;
    }

    private bool TryNumber(ReadOnlySpan<char> text, ColumnProfile column, out double number)
    {
        if (_plain.TryRead(text, out number))
            return true;
        foreach (var (sign, numbers) in _grouped)
        {
            if (!numbers.TryRead(text, out number))
                continue;
            column.Thousands[sign] = column.Thousands.GetValueOrDefault(sign) + 1;
            return true;
        }

        return false;
    }
}
