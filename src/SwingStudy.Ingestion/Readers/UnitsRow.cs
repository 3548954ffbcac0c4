using SwingStudy.Domain.Units;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Tells a row of units from a row of data.</summary>
internal static class UnitsRow
{
    /// <summary>Whether the filled cells are units: at least half of them known ones, one of them more than a dash, and none a number.</summary>
    public static bool IsOne(IReadOnlyList<string> cells)
    {
        int filled = 0, known = 0, telling = 0;
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
            if (text.Any(sign => char.IsLetter(sign) || sign is '%' or '°' or 'º'))
                telling++;
        }

        return telling > 0 && known * 2 >= filled;
    }
}
