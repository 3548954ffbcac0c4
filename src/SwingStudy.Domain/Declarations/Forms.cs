using System.Text.RegularExpressions;

namespace SwingStudy.Domain.Declarations;

/// <summary>Forms that names in declarations have.</summary>
internal static partial class Forms
{
    /// <summary>Lower-case words joined by hyphens.</summary>
    public static bool IsKebab(string text) => Kebab().IsMatch(text);

    /// <summary>Lower-case words joined by underscores.</summary>
    public static bool IsSnake(string text) => Snake().IsMatch(text);

    /// <summary>A semantic version of three numbers, or null.</summary>
    public static Version? SemanticVersion(string text) => ThreeNumbers().IsMatch(text) ? Version.Parse(text) : null;

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Kebab();

    [GeneratedRegex("^[a-z][a-z0-9]*(_[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Snake();

    [GeneratedRegex(@"^(0|[1-9][0-9]{0,5})\.(0|[1-9][0-9]{0,5})\.(0|[1-9][0-9]{0,5})$", RegexOptions.CultureInvariant)]
    private static partial Regex ThreeNumbers();
}
