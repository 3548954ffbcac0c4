using System.Text.Json;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Screen;

/// <summary>A player who left and lets nothing of the earlier data count.</summary>
internal static class Withdrawn
{
    /// <summary>The <c>rule</c> of its flags.</summary>
    public const string Rule = "withdrawn";

    /// <summary>A flag for each swing, unless the player's newest word lets them count.</summary>
    public static IEnumerable<Flag> Flags(IReadOnlyList<Decision> words, IReadOnlyList<string?> swings)
    {
        if (words.Count == 0 || !LeavesOut(words[^1]))
            return [];
        return swings.OfType<string>().Select(swing => new Flag(swing, null, null, Rule, Flag.ExcludeSwing, "the player withdrew and lets no earlier data count", words[^1].Actor));
    }

    private static bool LeavesOut(Decision word)
    {
        using var subject = JsonDocument.Parse(word.Subject);
        return subject.RootElement.TryGetProperty("earlier", out var earlier) && earlier.GetString() == "leave-out";
    }
}
