using SwingStudy.Domain.Units;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Tells a row of units from a row of data.</summary>
internal static class UnitsRow
{
    /// <summary>
    /// Whether the filled cells are units: at least half of them known ones, one of them more than a dash, and none a number. Where single letters
    /// are all there is (s, N, N), every filled cell must be one, since a letter may also be a code.
    /// </summary>
    public static bool IsOne(IReadOnlyList<string> cells)
    {
        int filled = 0, known = 0, letters = 0, signs = 0;
        foreach (var cell in cells)
        {
            var text = HeadingText.WithoutBrackets(cell);
            if (text.Length == 0)
                continue;
            filled++;
            if (text.Any(char.IsLetterOrDigit) && NumberShape.Of(text, null) != NumberShapeKind.None)
                return false;
            if (!UnitCatalogue.TryParse(text, out _))
                continue;
            known++;
            if (text.Length == 1 && char.IsLetter(text[0]))
                letters++;
            else if (text.Any(sign => char.IsLetter(sign) || sign is '%' or '°' or 'º'))
                signs++;
        }

        return signs > 0 ? known * 2 >= filled : letters > 0 && known == filled;
    }
}
