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
            Compile(pattern);
            return null;
        }
        catch (RegexParseException exception)
        {
            return exception.Message;
        }
    }

    private static Regex Compiled(string pattern, bool whole)
    {
        var text = whole ? $@"\A(?:{pattern})\z" : pattern;
        try
        {
            return new(text, RegexOptions.CultureInvariant | RegexOptions.NonBacktracking, Regex.InfiniteMatchTimeout);
        }
        catch (NotSupportedException)
        {
            return new(text, RegexOptions.CultureInvariant, Timeout);
        }
    }
}
