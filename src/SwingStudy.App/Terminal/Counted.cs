using System.Globalization;

namespace SwingStudy.App.Terminal;

/// <summary>Numbers of things in words: "1 warning", "2 warnings", "1 alias", "2 aliases".</summary>
internal static class Counted
{
    /// <summary>The number and its noun.</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The noun for one.</param>
    /// <param name="many">The noun for any other number; <paramref name="one"/> with an s when not given.</param>
    public static string Of(long count, string one, string? many = null) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");
}
