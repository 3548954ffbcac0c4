using System.Collections.Concurrent;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>Reads cells that say more than a number: its unit (<c>98.4 mph</c>) and words that give its sign (<c>3.5 R</c>, <c>L 12°</c>). Used by all threads.</summary>
/// <remarks>A unit in a cell that is another one than the column's makes the cell unreadable, unless the mapping says that units stand in cells.</remarks>
internal sealed class MeasuredText
{
    private const double SameFactor = 1e-9;
    private readonly NumberText _numbers;
    private readonly FieldSource _field;
    private readonly Unit? _columnUnit;
    private readonly Unit _canonical;
    private readonly LinearScale _columnScale;
    private readonly (string Word, bool Turns)[] _signs;
    private readonly ConcurrentDictionary<string, LinearScale?> _scales = new(StringComparer.Ordinal);

    /// <param name="numbers">How the numbers are written.</param>
    /// <param name="field">The column in the mapping.</param>
    /// <param name="columnUnit">The unit that mapping, units row or heading name; null where units stand in cells alone.</param>
    /// <param name="canonical">The dictionary's unit.</param>
    /// <param name="columnScale">From numbers of the column's unit to the dictionary's.</param>
    public MeasuredText(NumberText numbers, FieldSource field, Unit? columnUnit, Unit canonical, LinearScale columnScale)
    {
        (_numbers, _field, _columnUnit, _canonical, _columnScale) = (numbers, field, columnUnit, canonical, columnScale);
        _signs = [.. field.Signs.Select(pair => (pair.Key, pair.Value)).OrderByDescending(pair => pair.Key.Length)];
    }

    /// <summary>Whether a number without its unit cannot be read.</summary>
    public bool NeedsUnit => _field.HasUnitInCells;

    /// <summary>What is written around numbers, for the rejects.</summary>
    public string Expected => (_field.HasUnitInCells ? ", with its unit" : "") + (_signs.Length > 0 ? $", with one of: {string.Join(", ", _signs.Select(sign => sign.Word))}" : "");

    /// <summary>The value of a trimmed cell in the dictionary's unit; false when it is written otherwise.</summary>
    public bool TryRead(ReadOnlySpan<char> cell, out double value)
    {
        value = double.NaN;
        var turns = TakeSign(ref cell, out var hasSign);
        NumberAndRest.Part(cell, out var digits, out var unit);
        if (digits.IsEmpty || (unit.IsEmpty && (!hasSign || NeedsUnit)) || !_numbers.TryRead(digits, out var number) || (hasSign && number < 0))
            return false;
        if ((unit.IsEmpty ? _columnScale : ScaleOf(unit.ToString())) is not { } scale)
            return false;
        value = scale.Apply(turns ? -number : number);
        return true;
    }

    private bool TakeSign(ref ReadOnlySpan<char> cell, out bool found)
    {
        foreach (var (word, turns) in _signs)
        {
            if (cell.Length <= word.Length)
                continue;
            if (cell.EndsWith(word, StringComparison.OrdinalIgnoreCase) && !char.IsLetter(cell[^(word.Length + 1)]))
                cell = cell[..^word.Length].TrimEnd();
            else if (cell.StartsWith(word, StringComparison.OrdinalIgnoreCase) && !char.IsLetter(cell[word.Length]))
                cell = cell[word.Length..].TrimStart();
            else
                continue;
            found = true;
            return turns;
        }

        found = false;
        return false;
    }

    private LinearScale? ScaleOf(string text) => _scales.GetOrAdd(text, static (text, self) => self.Scale(text), this);

    private LinearScale? Scale(string text)
    {
        if (UnitCatalogue.Parse(text) is not { } unit)
            return null;
        if (_columnUnit is not null)
            return UnitConversion.Between(unit, _columnUnit) is { } same && Math.Abs(same.Factor - 1) < SameFactor && Math.Abs(same.Offset) < SameFactor ? _columnScale : null;
        return UnitConversion.Between(unit, _canonical) is { } conversion ? LinearScale.Of(_field.Scale, _field.Offset, _field.Negate, conversion.Factor, conversion.Offset) : null;
    }
}
