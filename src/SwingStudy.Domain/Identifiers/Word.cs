using System.Text.Json;

namespace SwingStudy.Domain.Identifiers;

/// <summary>Words of enumerations as declarations and tables write them: <c>exclude-value</c> for <c>ExcludeValue</c>.</summary>
public static class Word
{
    /// <summary>The word of a value, in kebab-case.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>All words of an enumeration, in its order.</summary>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(Of)];
}
