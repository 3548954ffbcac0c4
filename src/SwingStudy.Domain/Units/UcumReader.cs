using System.Globalization;

namespace SwingStudy.Domain.Units;

/// <summary>Reads a case-sensitive UCUM code: terms joined by <c>.</c> and <c>/</c> from left to right, exponents, parentheses, annotations.</summary>
internal ref struct UcumReader
{
    private readonly ReadOnlySpan<char> _text;
    private int _at;

    private UcumReader(ReadOnlySpan<char> text) => _text = text;

    /// <summary>The unit of that code, or null when the text is no code of the catalogue.</summary>
    public static Unit? Read(string text)
    {
        if (UcumAtoms.Scales.TryGetValue(text, out var scale))
            return scale;
        var reader = new UcumReader(text);
        return reader.Term() is { } unit && reader._at == text.Length ? unit with { Code = text } : null;
    }

    private Unit? Term()
    {
        var result = Peek() == '/' ? new Unit("1", default, 1) : Component();
        while (result is not null && Peek() is '.' or '/')
        {
            var sign = _text[_at++] == '/' ? -1 : 1;
            result = Component() is { } next ? Times(result!, Power(next, sign)) : null;
        }

        return result;
    }

    private Unit? Component()
    {
        if (Peek() == '(')
        {
            _at++;
            var inner = Term();
            if (Peek() != ')')
                return null;
            _at++;
            return inner;
        }

        if (Peek() == '{')
            return Annotation();
        if (char.IsAsciiDigit(Peek()))
            return Number();
        if (Atom() is not { } atom)
            return null;
        var unit = Power(atom, Exponent());
        if (Peek() != '{')
            return unit;
        return Annotation() is { } annotation ? Times(unit, annotation) : null;
    }

    private Unit? Annotation()
    {
        var length = _text[_at..].IndexOf('}');
        if (length < 0)
            return null;
        var annotation = _text.Slice(_at, length + 1).ToString();
        _at += length + 1;
        return UcumAtoms.Annotations.TryGetValue(annotation, out var unit) ? unit : new Unit(annotation, default, 1);
    }

    private Unit? Number()
    {
        var start = _at;
        while (char.IsAsciiDigit(Peek()))
            _at++;
        var value = double.Parse(_text[start.._at], NumberStyles.None, CultureInfo.InvariantCulture);
        if (value == 10 && Peek() is '*' or '^')
        {
            _at++;
            return new Unit("1", default, Math.Pow(10, Exponent()));
        }

        return value > 0 ? new Unit("1", default, value) : null;
    }

    private Unit? Atom()
    {
        var start = _at;
        while (_at < _text.Length && IsAtomCharacter(_text[_at], _at > start && _text[start.._at].Contains('[') && !_text[start.._at].Contains(']')))
            _at++;
        var name = _text[start.._at].ToString();
        if (UcumAtoms.Plain.TryGetValue(name, out var plain))
            return plain;
        if (UcumAtoms.Metric.TryGetValue(name, out var metric))
            return metric;
        foreach (var length in (int[])[1, 2])
        {
            if (name.Length > length
                && UcumAtoms.Prefixes.TryGetValue(name[..length], out var factor)
                && UcumAtoms.Metric.TryGetValue(name[length..], out metric))
            {
                return metric with { Factor = metric.Factor * factor };
            }
        }

        return null;
    }

    private static bool IsAtomCharacter(char character, bool inBrackets) =>
        char.IsAsciiLetter(character) || character is '[' or ']' or '%' or '\'' || (inBrackets && (char.IsAsciiDigit(character) || character == '_'));

    private int Exponent()
    {
        var start = _at;
        if (Peek() is '-' or '+')
            _at++;
        while (char.IsAsciiDigit(Peek()))
            _at++;
        if (int.TryParse(_text[start.._at], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var exponent) && exponent is >= -9 and <= 9)
            return exponent;
        _at = start;
        return 1;
    }

    private readonly char Peek() => _at < _text.Length ? _text[_at] : '\0';

    private static Unit Times(Unit a, Unit b) => new(a.Code, a.Dimension.Times(b.Dimension), a.Factor * b.Factor);

    private static Unit Power(Unit unit, int exponent) => exponent switch
    {
        1 => unit,
        -1 => unit with { Dimension = unit.Dimension.Power(-1), Factor = 1 / unit.Factor },
        _ => unit with { Dimension = unit.Dimension.Power(exponent), Factor = Math.Pow(unit.Factor, exponent) },
    };
}
