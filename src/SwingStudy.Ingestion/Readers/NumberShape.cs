namespace SwingStudy.Ingestion.Readers;

/// <summary>Reads the form of a number without reading its value.</summary>
internal static class NumberShape
{
    /// <summary>The form of a trimmed text: sign, digits with points or commas, exponent.</summary>
    /// <param name="text">The text.</param>
    /// <param name="thousands">A sign between thousands that is declared, so that it says nothing about the decimal sign when it is no point or comma.</param>
    public static NumberShapeKind Of(ReadOnlySpan<char> text, char? thousands)
    {
        int at = 0, points = 0, commas = 0, digits = 0, digitsBefore = 0, digitsSince = 0;
        var last = '\0';
        var leadingZero = false;
        if (at < text.Length && text[at] is '+' or '-' or '\u2212')
            at++;
        for (; at < text.Length; at++)
        {
            var sign = text[at];
            if (char.IsAsciiDigit(sign))
            {
                leadingZero |= digits == 0 && sign == '0';
                digits++;
                digitsSince++;
            }
            else if (sign is '.' or ',')
            {
                if (points + commas == 0)
                    digitsBefore = digits;
                if (sign == '.')
                    points++;
                else
                    commas++;
                last = sign;
                digitsSince = 0;
            }
            else if (thousands is not { } between || !Mapping.Cells.NumberText.IsThousands(sign, between) || digits == 0)
            {
                break;
            }
        }

        if (digits == 0 || (at < text.Length && !IsExponent(text[at..])))
            return NumberShapeKind.None;
        if (points + commas == 0)
            return NumberShapeKind.Whole;
        if (points > 0 && commas > 0)
            return (last == '.' ? points : commas) > 1 ? NumberShapeKind.None : last == '.' ? NumberShapeKind.Point : NumberShapeKind.Comma;
        if (points + commas > 1)
            return digitsSince == 3 ? (points > 0 ? NumberShapeKind.Comma : NumberShapeKind.Point) : NumberShapeKind.None;
        if (at < text.Length || digitsSince != 3 || digitsBefore is 0 or > 3 || leadingZero)
            return last == '.' ? NumberShapeKind.Point : NumberShapeKind.Comma;
        return last == '.' ? NumberShapeKind.PointOrThousands : NumberShapeKind.CommaOrThousands;
    }

    private static bool IsExponent(ReadOnlySpan<char> text)
    {
        if (text[0] is not ('e' or 'E'))
            return false;
        var digits = text[1..].TrimStart("+-");
        return digits.Length is > 0 and <= 4 && text.Length - digits.Length <= 2 && !digits.ContainsAnyExceptInRange('0', '9');
    }
}
