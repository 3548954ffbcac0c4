using System.Globalization;
using System.Text;

namespace SwingStudy.Storage.Identities;

/// <summary>Unicode normalization form C from a table of its own: with invariant globalization the framework leaves text as it is,
/// and exports from some systems spell an accented letter as two characters.</summary>
/// <remarks>Source: Unicode Standard Annex 15. Singleton decompositions (compatibility duplicates of one letter) are not replaced.</remarks>
internal static class Composition
{
    private const int HangulBase = 0xAC00, LeadBase = 0x1100, VowelBase = 0x1161, TailBase = 0x11A7;
    private const int Leads = 19, Vowels = 21, Tails = 28;

    private static readonly Dictionary<(int, int), int> Composed = [];
    private static readonly Dictionary<int, (int, int)> Decomposed = [];
    private static readonly Dictionary<int, int> Classes = [];

    static Composition()
    {
        using var reader = new StreamReader(typeof(Composition).Assembly.GetManifestResourceStream("composition")!);
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('#'))
                continue;
            var parts = line.Split(' ');
            if (parts.Length == 2)
            {
                Classes.Add(Hex(parts[0]), int.Parse(parts[1], CultureInfo.InvariantCulture));
                continue;
            }

            var pair = (Hex(parts[0]), Hex(parts[1]));
            Composed.Add(pair, Hex(parts[2]));
            Decomposed.Add(Hex(parts[2]), pair);
        }
    }

    /// <summary>The text in form C.</summary>
    internal static string Compose(string text)
    {
        if (text.All(char.IsAscii))
            return text;
        var runes = new List<int>(text.Length);
        foreach (var rune in text.EnumerateRunes())
            Decompose(rune.Value, runes);
        Reorder(runes);
        return Join(runes);
    }

    private static void Decompose(int rune, List<int> into)
    {
        if (!Decomposed.TryGetValue(rune, out var pair))
        {
            into.Add(rune);
            return;
        }

        Decompose(pair.Item1, into);
        into.Add(pair.Item2);
    }

    private static void Reorder(List<int> runes)
    {
        for (var i = 1; i < runes.Count; i++)
        {
            for (var j = i; j > 0 && Class(runes[j]) != 0 && Class(runes[j - 1]) > Class(runes[j]); j--)
                (runes[j], runes[j - 1]) = (runes[j - 1], runes[j]);
        }
    }

    private static string Join(List<int> runes)
    {
        var joined = new List<int>(runes.Count);
        int starter = -1, lastClass = -1;
        foreach (var rune in runes)
        {
            var own = Class(rune);
            if (starter >= 0 && lastClass < own | lastClass == -1 && Pair(joined[starter], rune) is { } composed)
            {
                joined[starter] = composed;
                continue;
            }

            joined.Add(rune);
            if (own == 0)
                (starter, lastClass) = (joined.Count - 1, -1);
            else
                lastClass = own;
        }

        var text = new StringBuilder(joined.Count);
        foreach (var rune in joined)
            text.Append(new Rune(rune).ToString());
        return text.ToString();
    }

    private static int? Pair(int first, int second)
    {
        if (first is >= LeadBase and < LeadBase + Leads && second is >= VowelBase and < VowelBase + Vowels)
            return HangulBase + (((first - LeadBase) * Vowels) + second - VowelBase) * Tails;
        var syllable = first - HangulBase;
        if (syllable >= 0 && syllable < Leads * Vowels * Tails && syllable % Tails == 0 && second is > TailBase and < TailBase + Tails)
            return first + second - TailBase;
        return Composed.TryGetValue((first, second), out var composed) ? composed : null;
    }

    private static int Class(int rune) => Classes.GetValueOrDefault(rune);

    private static int Hex(string digits) => int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}
