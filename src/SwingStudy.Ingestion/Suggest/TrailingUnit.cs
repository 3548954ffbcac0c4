using SwingStudy.Domain.Units;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Finds a unit at the end of a heading that has no brackets: <c>club_speed_mph</c>, <c>Carry yds</c>, <c>ball_speed_m_s</c>.</summary>
internal static class TrailingUnit
{
    private static readonly char[] Signs = [' ', '_', '-', '.'];

    /// <summary>The unit as <see cref="UnitCatalogue"/> reads it; null where the heading ends with none.</summary>
    public static string? Of(string heading) => Find(heading, out _);

    /// <summary>The words of a heading without such a unit.</summary>
    public static string[] Without(string heading)
    {
        if (Find(heading, out var parts) is null)
            return HeadingWords.Of(heading);
        return HeadingWords.Of(string.Join(" ", parts.ToArray()));
    }

    private static string? Find(string heading, out ArraySegment<string> before)
    {
        string[] parts = heading.Split(Signs, StringSplitOptions.RemoveEmptyEntries);
        before = parts;

        // A single letter is a unit only where signs part all words, as programs name columns: carry_m, but not 'Plan B' or 'Time s'.
        var isName = !heading.Contains(' ', StringComparison.Ordinal);
        if (parts.Length >= 3 && isName && UnitCatalogue.TryParse($"{parts[^2]}/{parts[^1]}", out _) && parts[^2].Length + parts[^1].Length <= 6)
        {
            before = parts[..^2];
            return $"{parts[^2]}/{parts[^1]}";
        }

        if (parts.Length < 2 || (parts[^1].Length == 1 && !isName) || parts[^1].Any(char.IsDigit) || !UnitCatalogue.TryParse(parts[^1], out _))
            return null;
        before = parts[..^1];
        return parts[^1];
    }
}
