using System.Diagnostics.CodeAnalysis;

namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>A written form of local time, such as <c>dd.MM.yyyy HH:mm:ss</c>, compiled once.</summary>
/// <remarks>
/// Letters: <c>y</c> year (yyyy, or yy for 1970 to 2069), <c>M</c> month, <c>d</c> day, <c>H</c> hour 0 to 23, <c>h</c> hour 1 to 12 with <c>t</c> for
/// AM or PM, <c>m</c> minute, <c>s</c> second, <c>f</c> decimals of the second; <c>MMM</c> the name of the month or its beginning, <c>E</c> the name of the
/// weekday, which is passed over, <c>z</c> the offset from UTC. All else, and what is quoted, stands for itself. Without an hour the day's midnight is
/// meant. One digit is enough where a sign follows that is no digit (7.9.2026 fits dd.MM.yyyy); in <c>yyyyMMdd</c> the widths hold. Decimals beyond the
/// millisecond are cut. A blank stands for any number of blanks of any kind.
/// </remarks>
internal sealed class TimePattern
{
    private const int NamedMonth = 3;
    private readonly Token[] _tokens;

    private TimePattern(string text, Token[] tokens)
    {
        Text = text;
        _tokens = tokens;
    }

    /// <summary>The pattern as written.</summary>
    public string Text { get; }

    /// <summary>Whether its texts carry their offset from UTC.</summary>
    public bool HasOffset => Array.Exists(_tokens, token => token.Letter == 'z');

    /// <summary>Compiles a pattern; false, with the reason, when it cannot tell a time.</summary>
    public static bool TryCompile(string text, [NotNullWhen(true)] out TimePattern? pattern, [NotNullWhen(false)] out string? fault)
    {
        pattern = null;
        var tokens = new List<Token>();
        for (var i = 0; i < text.Length;)
        {
            var letter = text[i];
            if (letter == '\'' && text.IndexOf('\'', i + 1) is var close and > 0)
            {
                tokens.AddRange(text[(i + 1)..close].Select(sign => new Token('\0', 1, sign)));
                i = close + 1;
                continue;
            }

            var run = 1;
            while (i + run < text.Length && text[i + run] == letter)
                run++;
            i += run;
            if (letter is 'y' or 'M' or 'd' or 'H' or 'h' or 'm' or 's' or 'f' or 't' or 'z' or 'E')
            {
                if (tokens.Exists(token => token.Letter == letter))
                {
                    fault = $"'{letter}' stands twice";
                    return false;
                }

                tokens.Add(new Token(letter, run, letter));
            }
            else
            {
                for (var k = 0; k < run; k++)
                    tokens.Add(new Token('\0', 1, letter));
            }
        }

        var compiled = new Token[tokens.Count];
        for (var i = 0; i < compiled.Length; i++)
            compiled[i] = tokens[i] with { Exact = IsPacked(tokens, i) };
        fault = Fault(new string(Array.ConvertAll(compiled, token => token.Letter)));
        if (fault is not null)
            return false;
        pattern = new TimePattern(text, compiled);
        return true;
    }

    /// <summary>Milliseconds from 1970-01-01T00:00 local to the time in <paramref name="text"/>; UTC where the pattern holds an offset.</summary>
    public bool TryRead(ReadOnlySpan<char> text, out long localMillis)
    {
        localMillis = 0;
        int year = 1970, month = 1, day = 1, hour = 0, minute = 0, second = 0, millis = 0;
        var (afternoon, offsetMinutes) = (-1, 0);
        var twelve = false;
        var at = 0;
        foreach (var token in _tokens)
        {
            switch (token.Letter)
            {
                case '\0':
                    if (!TrySign(text, ref at, token.Sign))
                        return false;
                    break;
                case 'M' when token.Width >= NamedMonth:
                    if (!MonthNames.TryRead(text, ref at, out month))
                        return false;
                    break;
                case 'E':
                    if (!TryWeekday(text, ref at))
                        return false;
                    break;
                case 'z':
                    if (!UtcOffset.TryRead(text, ref at, out offsetMinutes))
                        return false;
                    break;
                case 'f':
                    if (!TryFraction(text, ref at, out millis))
                        return false;
                    break;
                case 't':
                    if (!TryHalfDay(text, ref at, out afternoon))
                        return false;
                    break;
                default:
                    if (!TryDigits(text, ref at, token, out var number))
                        return false;
                    switch (token.Letter)
                    {
                        case 'y': year = token.Width > 2 ? number : number < 70 ? 2000 + number : 1900 + number; break;
                        case 'M': month = number; break;
                        case 'd': day = number; break;
                        case 'H': hour = number; break;
                        case 'h': hour = number; twelve = true; break;
                        case 'm': minute = number; break;
                        default: second = number; break;
                    }

                    break;
            }
        }

        if (twelve)
        {
            if (hour is < 1 or > 12)
                return false;
            hour = (hour % 12) + (12 * afternoon);
        }

        if (at != text.Length || month is < 1 or > 12 || day < 1 || hour > 23 || minute > 59 || second > 59 || year is < 1900 or > 2199
            || (day > 28 && day > DateTime.DaysInMonth(year, month)))
            return false;
        localMillis = CivilDays.Since1970(year, month, day) * 86_400_000L + (((((hour * 60) + minute - offsetMinutes) * 60L) + second) * 1000) + millis;
        return true;
    }

    private static string? Fault(string letters)
    {
        if (!letters.Contains('y') || !letters.Contains('M') || !letters.Contains('d'))
            return "a date needs year, month and day";
        if (letters.Contains('h') != letters.Contains('t'))
            return "a 12-hour clock needs both h and t (AM or PM)";
        if (letters.Contains('h') && letters.Contains('H'))
            return "it names two hours";
        return letters.Contains('f') && !letters.Contains('s') ? "decimals need seconds" : null;
    }

    /// <summary>A number that touches the next number must have its full width.</summary>
    private static bool IsPacked(List<Token> tokens, int position) =>
        (position + 1 < tokens.Count && IsNumber(tokens[position + 1])) || (position > 0 && IsNumber(tokens[position - 1]) && tokens[position].Letter != '\0');

    private static bool IsNumber(Token token) => token.Letter is not ('\0' or 't' or 'z' or 'E') && !(token.Letter == 'M' && token.Width >= NamedMonth);

    private static bool TrySign(ReadOnlySpan<char> text, ref int at, char sign)
    {
        if (at >= text.Length || (text[at] != sign && !(sign == ' ' && char.IsWhiteSpace(text[at]))))
            return false;
        at++;
        while (sign == ' ' && at < text.Length && char.IsWhiteSpace(text[at]))
            at++;
        return true;
    }

    /// <summary>The day of the month tells the day: its weekday is passed over, in any language.</summary>
    private static bool TryWeekday(ReadOnlySpan<char> text, ref int at)
    {
        var from = at;
        while (at < text.Length && char.IsLetter(text[at]))
            at++;
        var count = at - from;
        if (at < text.Length && text[at] == '.')
            at++;
        return count >= 2;
    }

    private static bool TryDigits(ReadOnlySpan<char> text, ref int at, Token token, out int number)
    {
        number = 0;
        var most = token.Letter == 'y' ? Math.Max(token.Width, 2) : 2;
        var least = token.Letter == 'y' ? most : token.Exact ? token.Width : 1;
        var count = 0;
        while (count < most && at < text.Length && char.IsAsciiDigit(text[at]))
        {
            number = (number * 10) + (text[at] - '0');
            at++;
            count++;
        }

        return count >= least;
    }

    private static bool TryFraction(ReadOnlySpan<char> text, ref int at, out int millis)
    {
        millis = 0;
        var count = 0;
        for (; at < text.Length && char.IsAsciiDigit(text[at]) && count < 9; at++, count++)
        {
            if (count < 3)
                millis = (millis * 10) + (text[at] - '0');
        }

        for (var k = count; k < 3; k++)
            millis *= 10;
        return count > 0;
    }

    private static bool TryHalfDay(ReadOnlySpan<char> text, ref int at, out int afternoon)
    {
        afternoon = -1;
        if (at >= text.Length)
            return false;
        afternoon = text[at] is 'P' or 'p' ? 1 : text[at] is 'A' or 'a' ? 0 : -1;
        if (afternoon < 0)
            return false;
        at++;
        if (at < text.Length && text[at] == '.')
            at++;
        if (at < text.Length && text[at] is 'M' or 'm')
            at++;
        if (at < text.Length && text[at] == '.')
            at++;
        return true;
    }

    /// <summary>A field (letter, width) or a sign that stands for itself.</summary>
    private readonly record struct Token(char Letter, int Width, char Sign, bool Exact = false);
}
