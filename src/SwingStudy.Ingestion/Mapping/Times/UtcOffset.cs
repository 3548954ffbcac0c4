namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>An offset from UTC as texts write it: <c>Z</c>, <c>+02</c>, <c>+0200</c>, <c>-05:30</c>, <c>UTC+2</c>, <c>GMT</c>.</summary>
internal static class UtcOffset
{
    private const int MostHours = 18;

    /// <summary>Reads an offset at a place and moves behind it.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, ref int at, out int minutes)
    {
        minutes = 0;
        if (at < text.Length && text[at] is 'Z' or 'z')
        {
            at++;
            return true;
        }

        var named = text[at..].StartsWith("UTC", StringComparison.OrdinalIgnoreCase) || text[at..].StartsWith("GMT", StringComparison.OrdinalIgnoreCase);
        if (named)
            at += 3;
        if (at >= text.Length || text[at] is not ('+' or '-' or '\u2212'))
            return named;
        var sign = text[at++] == '+' ? 1 : -1;
        if (!TryNumber(text, ref at, named ? 1 : 2, out var hours) || hours > MostHours)
            return false;
        var rest = 0;
        var hasColon = at < text.Length && text[at] == ':';
        if (hasColon)
            at++;
        if ((hasColon || (at < text.Length && char.IsAsciiDigit(text[at]))) && (!TryNumber(text, ref at, 2, out rest) || rest > 59))
            return false;
        minutes = sign * ((hours * 60) + rest);
        return true;
    }

    private static bool TryNumber(ReadOnlySpan<char> text, ref int at, int fewest, out int number)
    {
        number = 0;
        var from = at;
        while (at - from < 2 && at < text.Length && char.IsAsciiDigit(text[at]))
            number = (number * 10) + (text[at++] - '0');
        return at - from >= fewest;
    }
}
