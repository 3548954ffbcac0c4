namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>ISO 8601 calendar times in extended form, with T or a blank between day and time, seconds and offset optional.</summary>
internal static class IsoTime
{
    private static readonly TimePattern[] Forms =
    [
        Compiled("yyyy-MM-ddTHH:mm:ss.f"), Compiled("yyyy-MM-ddTHH:mm:ss"), Compiled("yyyy-MM-ddTHH:mm"), Compiled("yyyy-MM-dd"),
    ];

    /// <summary>Milliseconds since 1970; UTC when the text carries <c>Z</c> or an offset, which then wins over any zone.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, out long millis, out bool isUtc)
    {
        isUtc = false;
        millis = 0;
        if (!TryOffset(ref text, out var offsetMinutes, out isUtc) || text.Length is < 10 or > 40)
            return false;
        Span<char> plain = stackalloc char[40];
        text.CopyTo(plain);
        plain = plain[..text.Length];
        if (plain.Length > 10 && plain[10] is ' ' or 't')
            plain[10] = 'T';
        plain.Replace(',', '.');
        foreach (var form in Forms)
        {
            if (form.TryRead(plain, out millis))
            {
                millis -= offsetMinutes * 60_000L;
                return true;
            }
        }

        return false;
    }

    private static bool TryOffset(ref ReadOnlySpan<char> text, out int minutes, out bool found)
    {
        minutes = 0;
        found = false;
        if (text.Length < 11)
            return true;
        if (text[^1] is 'Z' or 'z')
        {
            found = true;
            text = text[..^1].TrimEnd();
            return true;
        }

        var sign = text[10..].LastIndexOfAny('+', '-', '\u2212');
        if (sign < 0)
            return true;
        var digits = text[(10 + sign + 1)..];
        var negative = text[10 + sign] != '+';
        if (digits.Length is not (2 or 4 or 5) || (digits.Length == 5 && digits[2] != ':'))
            return false;
        if (!byte.TryParse(digits[..2], out var hours) || hours > 18)
            return false;
        byte rest = 0;
        if (digits.Length > 2 && (!byte.TryParse(digits[^2..], out rest) || rest > 59))
            return false;
        minutes = (negative ? -1 : 1) * ((hours * 60) + rest);
        found = true;
        text = text[..(10 + sign)].TrimEnd();
        return true;
    }

    private static TimePattern Compiled(string text) =>
        TimePattern.TryCompile(text, out var pattern, out var fault) ? pattern : throw new InvalidOperationException(fault);
}
