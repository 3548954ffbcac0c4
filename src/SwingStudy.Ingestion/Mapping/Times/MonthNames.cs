namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Names of months in the languages of headings (English, German, French, Spanish, Portuguese, Italian, Swedish), whole or cut to at least three letters.</summary>
/// <remarks>From the Unicode common locale data. Beginnings that are not the same month in all of these languages (<c>mar</c> is March everywhere) are left out.</remarks>
internal static class MonthNames
{
    private const int ShortestCut = 3;

    private static readonly string[][] Names =
    [
        ["january", "januar", "jänner", "janvier", "enero", "janeiro", "gennaio", "januari"],
        ["february", "februar", "feber", "février", "fevrier", "febrero", "fevereiro", "febbraio", "februari"],
        ["march", "märz", "maerz", "mars", "marzo", "março", "marco"],
        ["april", "avril", "abril", "aprile"],
        ["may", "mai", "mayo", "maio", "maggio", "maj"],
        ["june", "juni", "juin", "junio", "junho", "giugno"],
        ["july", "juli", "juillet", "julio", "julho", "luglio"],
        ["august", "août", "aout", "agosto", "augusti"],
        ["september", "septembre", "septiembre", "setiembre", "setembro", "settembre"],
        ["october", "oktober", "octobre", "octubre", "outubro", "ottobre"],
        ["november", "novembre", "noviembre", "novembro"],
        ["december", "dezember", "décembre", "decembre", "diciembre", "dezembro", "dicembre"],
    ];

    private static readonly Dictionary<string, int> Months = All();
    private static readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> BySpan = Months.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Reads a name, with a point behind it where one stands, and moves behind it.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, ref int at, out int month)
    {
        var from = at;
        while (at < text.Length && char.IsLetter(text[at]))
            at++;
        if (!BySpan.TryGetValue(text[from..at], out month))
            return false;
        if (at < text.Length && text[at] == '.')
            at++;
        return true;
    }

    private static Dictionary<string, int> All()
    {
        var months = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var doubtful = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var month = 1; month <= Names.Length; month++)
        {
            foreach (var name in Names[month - 1])
            {
                for (var length = Math.Min(ShortestCut, name.Length); length <= name.Length; length++)
                {
                    if (!months.TryAdd(name[..length], month) && months[name[..length]] != month)
                        doubtful.Add(name[..length]);
                }
            }
        }

        foreach (var cut in doubtful)
            months.Remove(cut);
        return months;
    }
}
