using System.Runtime.CompilerServices;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>The text of a cell without the blanks around it.</summary>
internal static class CellText
{
    /// <summary>Trims blanks of all kinds and characters of no width. Most cells have none, so that two comparisons are enough.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ReadOnlySpan<char> Trim(ReadOnlySpan<char> text) =>
        text.IsEmpty || (IsPlain(text[0]) && IsPlain(text[^1])) ? text : TrimSlowly(text);

    private static bool IsPlain(char character) => character is > ' ' and < '\u0080';

    private static ReadOnlySpan<char> TrimSlowly(ReadOnlySpan<char> text)
    {
        var from = 0;
        var upTo = text.Length;
        while (from < upTo && IsBlank(text[from]))
            from++;
        while (upTo > from && IsBlank(text[upTo - 1]))
            upTo--;
        return text[from..upTo];
    }

    private static bool IsBlank(char character) => char.IsWhiteSpace(character) || character is '\u200B' or '\uFEFF';
}
