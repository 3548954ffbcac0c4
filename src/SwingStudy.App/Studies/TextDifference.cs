namespace SwingStudy.App.Studies;

/// <summary>How two texts differ, line by line.</summary>
internal static class TextDifference
{
    /// <summary>The lines of both texts in one sequence: kept, removed from the first, added by the second.</summary>
    /// <remarks>Longest common subsequence. Source: Hunt and McIlroy (1976), Bell Laboratories Computing Science Technical Report 41.</remarks>
    public static IReadOnlyList<DifferingLine> Of(string first, string second)
    {
        string[] from = Lines(first), to = Lines(second);
        var longest = new int[from.Length + 1, to.Length + 1];
        for (var i = from.Length - 1; i >= 0; i--)
        {
            for (var j = to.Length - 1; j >= 0; j--)
                longest[i, j] = from[i] == to[j] ? longest[i + 1, j + 1] + 1 : Math.Max(longest[i + 1, j], longest[i, j + 1]);
        }

        var lines = new List<DifferingLine>();
        for (int i = 0, j = 0; i < from.Length || j < to.Length;)
        {
            if (i < from.Length && j < to.Length && from[i] == to[j])
                lines.Add(new(LineChange.Kept, ++i, ++j, from[i - 1]));
            else if (i < from.Length && (j == to.Length || longest[i + 1, j] >= longest[i, j + 1]))
                lines.Add(new(LineChange.Removed, ++i, null, from[i - 1]));
            else
                lines.Add(new(LineChange.Added, null, ++j, to[j - 1]));
        }

        return lines;
    }

    private static string[] Lines(string text) => text.TrimEnd('\n').ReplaceLineEndings("\n").Split('\n');
}
