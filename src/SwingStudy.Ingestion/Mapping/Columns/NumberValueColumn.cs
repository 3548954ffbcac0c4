using System.Globalization;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>A measured number or a count.</summary>
internal sealed class NumberValueColumn : NumericColumn
{
    // A conversion of units rounds: the very limit of the possible range stays possible.
    private const double LimitSlack = 1e-12;
    private static readonly NumberText TypedNumbers = new('.', null);
    private readonly NumberText _numbers;
    private readonly LinearScale _scale;
    private readonly MeasuredText? _measured;
    private readonly double _minimum;
    private readonly double _maximum;
    private readonly bool _whole;
    private readonly bool _zeroIsMissing;
    private readonly bool _missingMayBeNumber;

    public NumberValueColumn(Variable variable, ColumnPlace place, MissingTokens missing, NumberText numbers, LinearScale scale, MeasuredText? measured = null)
        : base(variable, place, missing)
    {
        _numbers = numbers;
        _scale = scale;
        _measured = measured;
        _minimum = variable.Minimum is { } low ? low - (Math.Abs(low) * LimitSlack) : double.NegativeInfinity;
        _maximum = variable.Maximum is { } high ? high + (Math.Abs(high) * LimitSlack) : double.PositiveInfinity;
        _whole = variable.Type == VariableType.Integer;
        _zeroIsMissing = variable.ZeroIsMissing;
        _missingMayBeNumber = missing.MayBeNumber;
    }

    public override string Expected
    {
        get
        {
            var noun = _whole ? "a whole number" : "a number";
            var unit = (Variable.Unit is null or "1" ? "" : " " + Variable.Unit) + _measured?.Expected;
            return (Variable.Minimum, Variable.Maximum) switch
            {
                ({ } low, { } high) => string.Create(CultureInfo.InvariantCulture, $"{noun} from {low} to {high}{unit}"),
                ({ } low, null) => string.Create(CultureInfo.InvariantCulture, $"{noun} from {low}{unit}"),
                (null, { } high) => string.Create(CultureInfo.InvariantCulture, $"{noun} up to {high}{unit}"),
                _ => noun + _measured?.Expected,
            };
        }
    }

    public override CellVerdict Read(ReadOnlySpan<char> cell, CellKind kind, out double value)
    {
        if (kind != CellKind.Text)
            return ReadTyped(cell, kind, out value);
        if (!_numbers.TryRead(cell, out var number))
        {
            value = double.NaN;
            if (Missing.Hold(cell))
                return CellVerdict.Missing;
            return _measured is not null && _measured.TryRead(cell, out var measured) ? Judge(cell, measured, LinearScale.Same, out value) : CellVerdict.Unparsable;
        }

        if (_measured is { NeedsUnit: true })
        {
            value = double.NaN;
            return Missing.Hold(cell) ? CellVerdict.Missing : CellVerdict.Unparsable;
        }

        return Judge(cell, number, _scale, out value);
    }

    private CellVerdict ReadTyped(ReadOnlySpan<char> cell, CellKind kind, out double value)
    {
        value = double.NaN;
        if (Missing.Hold(cell))
            return CellVerdict.Missing;
        return kind switch
        {
            CellKind.Date => CellVerdict.BecameDate,
            CellKind.Number when _measured is not { NeedsUnit: true } && TypedNumbers.TryRead(cell, out var number) => Judge(cell, number, _scale, out value),
            _ => CellVerdict.Unparsable,
        };
    }

    private CellVerdict Judge(ReadOnlySpan<char> cell, double number, LinearScale scale, out double value)
    {
        value = double.NaN;
        if (_missingMayBeNumber && Missing.Hold(cell))
            return CellVerdict.Missing;
        if (_zeroIsMissing && number == 0)
            return CellVerdict.Missing;
        var converted = scale.Apply(number);
        if (_whole)
        {
            var rounded = Math.Round(converted);
            if (Math.Abs(converted - rounded) > 1e-9 || Math.Abs(rounded) > 1L << 53)
                return CellVerdict.Unparsable;
            converted = rounded;
        }

        if (!(converted >= _minimum && converted <= _maximum) || double.IsInfinity(converted))
            return CellVerdict.OutOfRange;
        value = converted;
        return CellVerdict.Value;
    }
}
