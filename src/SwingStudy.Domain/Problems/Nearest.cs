namespace SwingStudy.Domain.Problems;

/// <summary>The known word that a person most likely meant.</summary>
public static class Nearest
{
    /// <summary>The nearest of <paramref name="known"/> by edits (a swap of neighbours counts one), ignoring case; null when none is near.</summary>
    /// <remarks>Near is: at most a third of the letters differ, and at most three, or one word holds the other.</remarks>
    public static string? Of(string word, IEnumerable<string> known)
    {
        var best = known
            .Select(candidate => (candidate, distance: Distance(word, candidate)))
            .OrderBy(pair => pair.distance)
            .ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .ToList();
        if (best.Count == 0)
            return null;
        var (nearest, edits) = best[0];
        if (edits <= Math.Min(3, Math.Max(1, word.Length / 3)))
            return nearest;
        return word.Length < 4
            ? null
            : best.Select(pair => pair.candidate).FirstOrDefault(candidate =>
                candidate.Contains(word, StringComparison.OrdinalIgnoreCase)
                || (candidate.Length >= 4 && word.Contains(candidate, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>Optimal string alignment distance.</summary>
    private static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }

        return rows[a.Length, b.Length];
    }

    private static bool Same(char a, char b) => char.ToUpperInvariant(a) == char.ToUpperInvariant(b);
}
