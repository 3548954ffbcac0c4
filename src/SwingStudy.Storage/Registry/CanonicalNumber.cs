using System.Globalization;

namespace SwingStudy.Storage.Registry;

/// <summary>Numbers in canonical JSON: the shortest digits that give the same double, laid out as ECMAScript does. Source: RFC 8785, 3.2.2.3;
/// ECMA-262, Number::toString.</summary>
internal static class CanonicalNumber
{
    private const int LongestPlain = 21;
    private const int MostLeadingZeros = 6;

    /// <summary>The number's text.</summary>
    internal static string Of(double number)
    {
        if (number == 0)
            return "0";
        var (digits, point) = Digits(Math.Abs(number).ToString("R", CultureInfo.InvariantCulture));
        return (number < 0 ? "-" : "") + Layout(digits, point);
    }

    /// <summary>The significant digits, and how many of them stand before the decimal point (negative: zeros after it).</summary>
    private static (string Digits, int Point) Digits(string exact)
    {
        var parts = exact.Split('E');
        var exponent = parts.Length == 2 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
        var mantissa = parts[0].Split('.');
        var all = string.Concat(mantissa);
        var significant = all.TrimStart('0');
        return (significant.TrimEnd('0'), mantissa[0].Length + exponent - (all.Length - significant.Length));
    }

    /// <summary>Digits with the decimal point after the first <paramref name="point"/> of them.</summary>
    private static string Layout(string digits, int point)
    {
        if (point is > 0 and <= LongestPlain)
        {
            return digits.Length <= point
                ? digits.PadRight(point, '0')
                : $"{digits[..point]}.{digits[point..]}";
        }

        if (point is <= 0 and > -MostLeadingZeros)
            return "0." + new string('0', -point) + digits;
        var exponent = point - 1;
        var sign = exponent < 0 ? "-" : "+";
        var mantissa = digits.Length == 1 ? digits : $"{digits[0]}.{digits[1..]}";
        return string.Create(CultureInfo.InvariantCulture, $"{mantissa}e{sign}{Math.Abs(exponent)}");
    }
}
