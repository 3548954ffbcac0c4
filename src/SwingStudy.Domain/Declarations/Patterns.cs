using System.Text.RegularExpressions;

namespace SwingStudy.Domain.Declarations;

/// <summary>Compiles the regular expressions of declarations so that no pattern and no file can stall a run.</summary>
public static class Patterns
{
    /// <summary>Longest time that one match may take where a pattern needs backtracking.</summary>
    public static TimeSpan Timeout { get; } = TimeSpan.FromSeconds(2);

    /// <summary>
    /// The compiled pattern: matching in linear time where the pattern allows it, with a time limit otherwise (look-around, back-references).
    /// </summary>
    /// <param name="pattern">The regular expression.</param>
    /// <param name="whole">Whether the whole text must match.</param>
    /// <exception cref="RegexParseException">The pattern is none; <see cref="Fault"/> tells beforehand.</exception>
    public static Regex Compile(string pattern, bool whole = false)
    {
        var text = whole ? $@"\A(?:{pattern})\z" : pattern;
        try
        {
            return new(text, RegexOptions.CultureInvariant | RegexOptions.NonBacktracking, Timeout);
        }
        catch (NotSupportedException)
        {
            return new(text, RegexOptions.CultureInvariant, Timeout);
        }
    }

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
}
