using System.Globalization;
using System.Text;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The text of headings: what is seen of it, and the unit in it.</summary>
internal static class HeadingText
{
    /// <summary>What a person sees: composed, without zero-width and control characters, each run of blanks of any kind as one blank, none around it.</summary>
    public static string Clean(string text)
    {
        var composed = text.IsNormalized() ? text : text.Normalize();
        if (!NeedsCleaning(composed))
            return composed;
        var clean = new StringBuilder(composed.Length);
        foreach (var sign in composed)
        {
            if (char.IsWhiteSpace(sign))
            {
                if (clean.Length > 0 && clean[^1] != ' ')
                    clean.Append(' ');
            }
            else if (!IsInvisible(sign))
            {
                clean.Append(sign);
            }
        }

        return clean.ToString().TrimEnd(' ');
    }

    /// <summary>Whether the text holds characters that nobody sees: zero-width ones, a byte order mark, blanks that are not the plain blank.</summary>
    public static bool HoldsInvisible(string text) =>
        text.Any(sign => IsInvisible(sign) || (sign is not (' ' or '\n' or '\r' or '\t') && char.IsWhiteSpace(sign)));

    /// <summary>Takes a unit in brackets at the end off a heading: <c>Carry (m)</c>, <c>Speed [mph]</c>.</summary>
    public static (string Bare, string? Unit) SplitUnit(string heading)
    {
        if (heading.Length < 3 || heading[^1] is not (')' or ']'))
            return (heading, null);
        var open = heading.LastIndexOf(heading[^1] == ')' ? '(' : '[');
        var unit = open < 0 ? "" : heading[(open + 1)..^1].Trim();
        var bare = open < 0 ? "" : heading[..open].TrimEnd();
        return unit.Length == 0 || bare.Length == 0 ? (heading, null) : (bare, unit);
    }

    /// <summary>A cell of a units row without the one pair of brackets around it.</summary>
    public static string WithoutBrackets(string text)
    {
        var clean = Clean(text);
        return clean.Length > 2 && (clean[0], clean[^1]) is ('[', ']') or ('(', ')') && clean.IndexOf(clean[0], 1) < 0 ? clean[1..^1].Trim() : clean;
    }

    /// <summary>Zero-width spaces and joiners, direction marks, soft hyphen, byte order mark, controls other than line breaks and tabs.</summary>
    private static bool IsInvisible(char sign) =>
        char.GetUnicodeCategory(sign) == UnicodeCategory.Format || (char.IsControl(sign) && !char.IsWhiteSpace(sign));

    private static bool NeedsCleaning(string text)
    {
        if (text.Length > 0 && (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1])))
            return true;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == ' ' ? text[i - 1] == ' ' : char.IsWhiteSpace(text[i]) || IsInvisible(text[i]))
                return true;
        }

        return false;
    }
}
