using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Which row of a file holds its headings, by the words of the dictionary.</summary>
/// <param name="Score">How much the headings sound like variables and roles, in cells.</param>
/// <param name="Line">Line of the first heading row.</param>
/// <param name="HeadingRows">One or two.</param>
/// <param name="Cells">How many headings there are.</param>
internal sealed record LayoutGuess(double Score, int Line, int HeadingRows, int Cells)
{
    private const int SearchedRecords = 80;
    private const double LeastLikeness = 0.6;
    private static readonly ColumnRole[] Roles = Enum.GetValues<ColumnRole>();

    /// <summary>The best row, or null when the file has none with two texts side by side.</summary>
    public static LayoutGuess? Of(IReadOnlyList<HeadRecord> records, IReadOnlyList<VariableNames> variables)
    {
        var seen = new Dictionary<string, double>(StringComparer.Ordinal);
        LayoutGuess? best = null;
        for (var i = 0; i < Math.Min(records.Count, SearchedRecords); i++)
        {
            var cells = records[i].Cells;
            if (!MayBeHeadings(cells))
                continue;
            var score = ScoreOf(cells, variables, seen);
            Offer(new(score, records[i].Line, 1, Filled(cells)));
            if (i + 1 < records.Count && MayBeGroups(cells, records[i + 1].Cells))
            {
                // A group counts most where it tells headings apart that are the same without it.
                var joined = HeadingFinder.Joined(cells, records[i + 1].Cells);
                var apart = Distinct(joined) - Distinct(records[i + 1].Cells);
                Offer(new(ScoreOf(joined, variables, seen) + apart - 0.01, records[i].Line, 2, Filled(records[i + 1].Cells)));
            }
        }

        return best;

        void Offer(LayoutGuess guess)
        {
            if (best is null || guess.Score > best.Score + 1e-9 || (guess.Score == best.Score && guess.Score == 0 && guess.Cells > best.Cells))
                best = guess;
        }
    }

    private static double ScoreOf(IReadOnlyList<string> cells, IReadOnlyList<VariableNames> variables, Dictionary<string, double> seen)
    {
        var score = 0.0;
        foreach (var cell in cells)
        {
            if (!seen.TryGetValue(cell, out var likeness))
            {
                var words = HeadingWords.Of(HeadingText.SplitUnit(HeadingText.Clean(cell)).Bare);
                likeness = Math.Max(variables.Max(names => names.Likeness(words).Likeness), Roles.Max(role => RoleWords.Likeness(words, role)));
                seen[cell] = likeness;
            }

            score += likeness >= LeastLikeness ? likeness : 0;
        }

        return score;
    }

    private static int Filled(IReadOnlyList<string> cells) => cells.Count(cell => !string.IsNullOrWhiteSpace(cell));

    private static int Distinct(IReadOnlyList<string> cells) => cells.Select(HeadingText.Clean).Distinct(StringComparer.OrdinalIgnoreCase).Count();

    private static bool MayBeHeadings(IReadOnlyList<string> cells) =>
        Filled(cells) >= 1 && !cells.Any(cell => NumberShape.Of(cell.Trim(), null) != NumberShapeKind.None) && !UnitsRow.IsOne(cells);

    /// <summary>A row of groups has gaps, and the row below it fills them.</summary>
    private static bool MayBeGroups(IReadOnlyList<string> upper, IReadOnlyList<string> lower) =>
        MayBeHeadings(lower) && Filled(upper) >= 2 && Filled(upper) < Filled(lower);
}
