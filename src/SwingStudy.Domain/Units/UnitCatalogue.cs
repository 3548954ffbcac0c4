using System.Diagnostics.CodeAnalysis;

namespace SwingStudy.Domain.Units;

/// <summary>All units that declarations and exports may name.</summary>
public static class UnitCatalogue
{
    /// <summary>The unit of a UCUM code or of a customary name (<c>mph</c>, <c>yd</c>, <c>°/s</c>, <c>lbs</c>, <c>rpm</c>), or null when nothing is known of it.</summary>
    /// <remarks>
    /// Codes are case-sensitive and come first; names ignore case. Blanks around, one pair of brackets around (<c>[mph]</c>, <c>(deg)</c>), raised
    /// digits and the signs · * ^ of other notations are understood. <see cref="Unit.Code"/> of the result is always a UCUM code.
    /// </remarks>
    public static Unit? Parse(string text)
    {
        var trimmed = text.Trim();
        return Known(Inside(trimmed, '(', ')')) ?? Known(trimmed) ?? Known(Inside(trimmed, '[', ']'));
    }

    /// <summary>The unit of a UCUM code alone, as declarations must write it; null when it is none.</summary>
    public static Unit? ParseCode(string code) => UcumReader.Read(code);

    /// <summary>The unit of that code or name.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out Unit? unit) => (unit = Parse(text)) is not null;

    private static Unit? Known(string text)
    {
        if (text.Length == 0)
            return null;
        if (UcumReader.Read(text) is { } unit)
            return unit;
        if (CustomaryNames.Codes.TryGetValue(text, out var code))
            return UcumReader.Read(code);
        var plain = Plain(text);
        return UcumReader.Read(plain) ?? (CustomaryNames.Codes.TryGetValue(plain, out code) ? UcumReader.Read(code) : null);
    }

    private static string Inside(string text, char open, char close) =>
        text.Length > 2 && text[0] == open && text[^1] == close ? text[1..^1].Trim() : text;

    private static string Plain(string text) => text
        .Replace('·', '.')
        .Replace('⋅', '.')
        .Replace('*', '.')
        .Replace("^", "", StringComparison.Ordinal)
        .Replace("⁻", "-", StringComparison.Ordinal)
        .Replace('¹', '1')
        .Replace('²', '2')
        .Replace('³', '3')
        .Replace(" / ", "/", StringComparison.Ordinal)
        .Replace("°", "deg", StringComparison.Ordinal)
        .Replace("º", "deg", StringComparison.Ordinal);
}
