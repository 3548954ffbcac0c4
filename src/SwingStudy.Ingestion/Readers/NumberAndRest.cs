using SwingStudy.Domain.Units;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Parts a cell into a number and what is written behind it: a unit, a letter for the direction.</summary>
internal static class NumberAndRest
{
    /// <summary>The number at the beginning, trimmed, and the trimmed rest; an empty number where the cell begins otherwise.</summary>
    public static void Part(ReadOnlySpan<char> text, out ReadOnlySpan<char> number, out ReadOnlySpan<char> rest)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '+' or '-' or '\u2212' or '.' or ',' or '\'' or '’' || char.IsWhiteSpace(text[end])))
            end++;
        number = text[..end].Trim();
        rest = text[end..].Trim();
        if (!number.ContainsAnyInRange('0', '9'))
            number = [];
    }

    /// <summary>The number of a cell that holds a known unit or a single letter behind it, or both; empty for all other cells.</summary>
    public static ReadOnlySpan<char> NumberOf(ReadOnlySpan<char> text)
    {
        Part(text, out var number, out var rest);
        if (number.IsEmpty || rest.IsEmpty)
            return [];
        return (rest.Length == 1 && char.IsLetter(rest[0])) || UnitCatalogue.TryParse(rest.ToString(), out _) || UnitCatalogue.TryParse(WithoutLetter(rest).ToString(), out _)
            ? number
            : [];
    }

    /// <summary>The text without a last letter that stands alone: <c>° L</c> is <c>°</c>.</summary>
    public static ReadOnlySpan<char> WithoutLetter(ReadOnlySpan<char> text) =>
        text.Length > 1 && char.IsLetter(text[^1]) && !char.IsLetter(text[^2]) ? text[..^1].TrimEnd() : text;
}
