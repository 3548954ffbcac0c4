using System.Collections.Concurrent;
using System.Text.RegularExpressions;

namespace SwingStudy.Domain.Declarations;

/// <summary>Compiles the regular expressions of declarations so that no pattern and no file can stall a run.</summary>
public static class Patterns
{
    private static readonly ConcurrentDictionary<(string Pattern, bool Whole), Regex> Known = new();

    /// <summary>Longest time that one match may take where a pattern needs backtracking.</summary>
    public static TimeSpan Timeout { get; } = TimeSpan.FromSeconds(2);

    /// <summary>
    /// The compiled pattern: matching in linear time where the pattern allows it, with a time limit otherwise (look-around, back-references).
    /// The usual simple pattern is left to the engine that backtracks, where it is linear too: the other one is compiled anew at every start.
    /// Each is compiled once, since all files of a source are held against the same few.
    /// </summary>
    /// <param name="pattern">The regular expression.</param>
    /// <param name="whole">Whether the whole text must match.</param>
    /// <exception cref="RegexParseException">The pattern is none; <see cref="Fault"/> tells beforehand.</exception>
    public static Regex Compile(string pattern, bool whole = false) => Known.GetOrAdd((pattern, whole), static key => Compiled(key.Pattern, key.Whole));

    /// <summary>What is wrong with the pattern, or null.</summary>
    internal static string? Fault(string pattern)
    {
        try
        {
            _ = Parsed(pattern);
            return null;
        }
        catch (RegexParseException exception)
        {
            return exception.Message;
        }
    }

    /// <summary>Names of the groups of a pattern, numbers among them.</summary>
    /// <exception cref="RegexParseException">The pattern is none.</exception>
    internal static string[] GroupNames(string pattern) => Parsed(pattern).GetGroupNames();

    /// <summary>The pattern as it is read, not to be matched.</summary>
    private static Regex Parsed(string pattern) => new(pattern, RegexOptions.CultureInvariant, Timeout);

    private static Regex Compiled(string pattern, bool whole)
    {
        var text = whole ? $@"\A(?:{pattern})\z" : pattern;
        if (IsSimple(text))
            return new(text, RegexOptions.CultureInvariant, Timeout);
        try
        {
            return new(text, RegexOptions.CultureInvariant | RegexOptions.NonBacktracking, Regex.InfiniteMatchTimeout);
        }
        catch (NotSupportedException)
        {
            return new(text, RegexOptions.CultureInvariant, Timeout);
        }
    }

    /// <summary>
    /// Whether backtracking cannot take longer than the text is long: the match starts where the text does, nothing is a choice or stands for what was
    /// matched before, and one thing at most is repeated. Patterns that hold anything rarer are not looked into.
    /// </summary>
    private static bool IsSimple(string text)
    {
        if (!text.StartsWith('^') && !text.StartsWith(@"\A", StringComparison.Ordinal))
            return false;
        var repetitions = 0;
        for (var i = 0; i < text.Length; i++)
        {
            switch (text[i])
            {
                case '\\' when i + 1 < text.Length && "AbBdDrnsStwWzZ".Contains(text[i + 1], StringComparison.Ordinal):
                case '\\' when i + 1 < text.Length && !char.IsAsciiLetterOrDigit(text[i + 1]):
                    i++;
                    break;
                case '(' when text.AsSpan(i).StartsWith("(?:"):
                    i += "?:".Length;
                    break;
                case '(' when text.AsSpan(i).StartsWith("(?<") && i + 3 < text.Length && char.IsAsciiLetter(text[i + 3]):
                    i += "?<".Length;
                    break;
                case '(' when i + 1 < text.Length && text[i + 1] != '?':
                    break;
                case '*' or '+' or '?' or '{':
                    repetitions++;
                    break;
                case '\\' or '(' or '[' or '|':
                    return false;
            }
        }

        return repetitions <= 1;
    }
}
